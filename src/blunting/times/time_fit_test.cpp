#include "blunting/times/time_fit.h"

#include "blunting/times/made_times.h"
#include "numerics/summaries.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace keenfall::blunting {
namespace {

TimeFit fit_of(const TimeData& data) {
  return *fit_times(data, {}, {11}, base::one_thread(), base::unwatched());
}

// Tried every 5 cuts, given up after 60: B's lives are often right-censored.
TEST(TimeFit, FindsTheRatioOfLivesAgainFromTheirIntervals) {
  const testing::MadeTimes made{.runs_each = 25};
  const auto data = prepare_times(testing::made_times(made, 4), {});

  const TimeFit fit = fit_of(*data);

  ASSERT_TRUE(fit.diagnostics.usable);
  Draws log_ratio = fit.arms[1].log_cuts;
  for (std::size_t d = 0; d < log_ratio.size(); ++d) log_ratio[d] -= fit.arms[0].log_cuts[d];
  const numerics::Interval found = numerics::interval_of(log_ratio);
  EXPECT_NEAR(found.median, made.log_median_b - made.log_median_a, 0.25);
  EXPECT_LT(found.lo95, made.log_median_b - made.log_median_a);
  EXPECT_GT(found.hi95, made.log_median_b - made.log_median_a);
  EXPECT_NEAR(std::log(numerics::median_of(fit.run_scatter[0])),
              std::log(made.scale * std::numbers::pi / std::numbers::sqrt3),
              0.3);
}

// Posterior means by brute force over a grid, with the likelihood written down anew.
TEST(TimeFit, AgreesWithAGridForOneArm) {
  trials::Trial trial{.blades = {{.name = "A"}}};
  const std::vector<trials::EdgeLife> lives{{.lasted_cuts = 5, .failed_by_cuts = 10},
                                            {.lasted_cuts = 10, .failed_by_cuts = 15},
                                            {.failed_by_cuts = 5},
                                            {.lasted_cuts = 20}};
  for (const auto& life : lives) {
    trial.runs.push_back({.arm = {.blade = "A"}, .edge_lives = {life}});
  }
  const auto data = prepare_times(trial, {});
  const double centre = (std::log(50) / 2 + std::log(150) / 2 + std::log(5) + std::log(20)) / 4;
  double weight = 0;
  double mean = 0;
  double mean_scatter = 0;
  for (int away = -300; away < 300; ++away) {
    const double mu = centre + away / 100.0;
    for (int hundredths = 1; hundredths < 300; ++hundredths) {
      const double sd = hundredths / 100.0;
      const auto share_below = [&](double cuts) {
        const double scale = std::hypot(sd, 0.1) * std::sqrt(3) / std::numbers::pi;
        return 1 / (1 + std::exp(-(std::log(cuts) - mu) / scale));
      };
      const double prior =
          std::exp(-(mu - centre) * (mu - centre) / 8 - 0.5 * sd * sd / (0.5 * 0.5));
      const double here = prior * (share_below(10) - share_below(5)) *
                          (share_below(15) - share_below(10)) * share_below(5) *
                          (1 - share_below(20));
      weight += here;
      mean += here * mu;
      mean_scatter += here * sd;
    }
  }

  const TimeFit fit = fit_of(*data);

  EXPECT_NEAR(numerics::mean_of(fit.arms[0].log_cuts), mean / weight, 0.03);
  EXPECT_NEAR(numerics::mean_of(fit.run_scatter[0]), mean_scatter / weight, 0.03);
}

TEST(TimeFit, SaysThatItWasStopped) {
  const auto data = prepare_times(testing::made_times({}, 3), {});

  const auto fit =
      fit_times(*data, {}, {11}, base::one_thread(), [](const base::Progress&) { return false; });

  ASSERT_FALSE(fit);
  EXPECT_EQ(fit.error().kind, base::ProblemKind::interrupted);
}

}  // namespace
}  // namespace keenfall::blunting
