#include "blunting/times/time_density.h"

#include "blunting/times/made_times.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace keenfall::blunting {
namespace {

using testing::made_times;

// The largest relative difference between the gradient and central differences, at some points.
double worst_slope_of_times(const trials::Trial& trial) {
  const auto data = prepare_times(trial, {});
  const TimeDensity density(*data);
  double worst = 0;
  for (std::uint64_t chain = 0; chain < 3; ++chain) {
    std::vector<double> q = density.start_for({5}, chain);
    std::vector<double> gradient(q.size());
    std::vector<double> unused(q.size());
    (void)density(q, gradient);
    for (std::size_t i = 0; i < q.size(); ++i) {
      const double h = 1e-5;
      const double here = q[i];
      q[i] = here + h;
      const double above = density(q, unused);
      q[i] = here - h;
      const double below = density(q, unused);
      q[i] = here;
      const double slope = (above - below) / (2 * h);
      worst = std::max(worst, std::abs(slope - gradient[i]) / (1 + std::abs(slope)));
    }
  }
  return worst;
}

TEST(TimeDensity, HasTheGradientOfItsOwnValue) {
  EXPECT_LT(worst_slope_of_times(made_times({}, 3)), 1e-7);
}

TEST(TimeDensity, HasTheGradientOfItsOwnValueWithBlocksAndSpecimens) {
  EXPECT_LT(
      worst_slope_of_times(made_times({.runs_each = 6, .blocks = 3, .two_specimens = true}, 3)),
      1e-7);
}

}  // namespace
}  // namespace keenfall::blunting
