#include "blunting/inference/run_fit.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace keenfall::blunting {
namespace {

struct Pair {
  double cuts;
  double reading;
};

// One run of the two-blade reference trial (tests/reference/two_blades_two_media.csv, B_clean_r2).
constexpr std::array kRun{
    Pair{0, 1.14073},   Pair{0, 1.04127},   Pair{0, 0.954203},  Pair{1, 1.21837},
    Pair{1, 1.07324},   Pair{1, 1.23451},   Pair{2, 1.11653},   Pair{2, 1.07108},
    Pair{2, 1.27661},   Pair{5, 1.12416},   Pair{5, 1.38245},   Pair{5, 1.01821},
    Pair{10, 1.45608},  Pair{10, 1.18783},  Pair{10, 1.32655},  Pair{20, 1.34543},
    Pair{20, 1.60775},  Pair{20, 1.58468},  Pair{50, 2.58761},  Pair{50, 2.15644},
    Pair{50, 2.257},    Pair{100, 3.45038}, Pair{100, 3.41264}, Pair{100, 3.07036},
    Pair{200, 4.88903}, Pair{200, 4.2926},  Pair{200, 4.06121}};

std::vector<RunPoint> points() {
  std::vector<RunPoint> all;
  for (const Pair& p : kRun)
    all.push_back({.log_cuts = std::log(p.cuts), .log_bluntness = std::log(p.reading)});
  return all;
}

// Gauss-Newton in R 4.2.2 on the same run and curve, shape free.
TEST(RunFit, AgreesWithNonlinearLeastSquaresInR) {
  const RunFit fit = fit_run(points(), {});

  ASSERT_TRUE(fit.converged);
  EXPECT_NEAR(fit.curve.log_start, 0.0515727584329, 1e-7);
  EXPECT_NEAR(fit.curve.log_half_keenness, 3.80397390918, 4e-7);
  EXPECT_NEAR(fit.curve.shape, 0.823784959867, 1e-7);
  EXPECT_NEAR(fit.sum_of_squares, 0.243883569408, 1e-8);
  EXPECT_NEAR(fit.residual_sd, 0.100805830149, 1e-8);
  ASSERT_EQ(fit.standard_errors.size(), 3U);
  EXPECT_NEAR(fit.standard_errors[0], 0.0399252698074, 1e-7);
  EXPECT_NEAR(fit.standard_errors[1], 0.147969636758, 1e-6);
  EXPECT_NEAR(fit.standard_errors[2], 0.0698949023676, 1e-7);
}

TEST(RunFit, OfAnEdgeThatNeverBluntsStillHasAnAnswer) {
  const std::vector<RunPoint> flat{{-HUGE_VAL, 4.6}, {0, 4.6}, {2, 4.6}, {4, 4.6}};
  const RunFit fit = fit_run(flat, {.fixed_shape = 0.8, .pull = Pull{.towards = {4.6, 2.0}}});

  EXPECT_NEAR(fit.curve.log_start, 4.6, 0.05);
  EXPECT_GT(fit.curve.log_half_keenness, 4);
  EXPECT_TRUE(std::isfinite(fit.curve.log_half_keenness));
}

}  // namespace
}  // namespace keenfall::blunting
