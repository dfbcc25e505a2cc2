#include "blunting/times/quick_times.h"

#include "blunting/times/made_times.h"
#include "numerics/summaries.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <string>

namespace keenfall::blunting {
namespace {

numerics::Interval log_ratio_in(const std::vector<ArmTimes>& arms) {
  Draws log_ratio = arms[1].log_cuts;
  for (std::size_t d = 0; d < log_ratio.size(); ++d) log_ratio[d] -= arms[0].log_cuts[d];
  return numerics::interval_of(log_ratio);
}

void expect_agreement(const testing::MadeTimes& made, std::uint64_t seed, const std::string& what) {
  const auto data = prepare_times(testing::made_times(made, seed), {});
  const auto fit = fit_times(*data, {.draws = 4000}, {11}, base::threads(2), base::unwatched());
  const numerics::Interval sampled = log_ratio_in(fit->arms);
  const numerics::Interval quick = log_ratio_in(quick_times(*data));
  const double sd = (sampled.hi95 - sampled.lo95) / 3.92;

  EXPECT_NEAR(quick.median, sampled.median, 0.1 * sd) << what;
  EXPECT_NEAR(quick.lo95, sampled.lo95, 0.2 * sd) << what;
  EXPECT_NEAR(quick.hi95, sampled.hi95, 0.2 * sd) << what;
}

TEST(QuickTimes, AgreeWithTheSampledPosterior) {
  for (const int runs : {1, 3, 6}) {
    expect_agreement({.runs_each = runs}, 8, std::to_string(runs) + " runs");
  }
}

TEST(QuickTimes, AgreeWithItWhereBlocksTieTheArms) {
  expect_agreement({.blocks = 2}, 8, "two blocks");
  expect_agreement({.runs_each = 6, .blocks = 3}, 9, "three blocks");
}

TEST(QuickTimes, AgreeWithItWhereABladeHasSpecimens) {
  expect_agreement({.two_specimens = true}, 8, "specimens");
  expect_agreement({.runs_each = 6, .blocks = 3, .two_specimens = true}, 9, "and blocks");
}

TEST(QuickTimes, AgreeWithItWhereOneArmNeverFailed) {
  expect_agreement({.log_median_b = 6, .blocks = 2}, 8, "at least");
}

// In the shape of the full fit: the same arms, and the scatter from run to run beside them, which
// stands on a grid of places 28 % apart.
TEST(QuickTimes, HaveTheScatterOfTheSampledPosteriorToo) {
  const auto data = prepare_times(testing::made_times({.runs_each = 6}, 8), {});

  const TimeFit quick = quick_posterior(*data);
  const auto full = fit_times(*data, {.draws = 4000}, {11}, base::threads(2), base::unwatched());

  const numerics::Interval sampled = numerics::interval_of(full->run_scatter.front());
  const numerics::Interval scatter = numerics::interval_of(quick.run_scatter.front());
  const double sd = (sampled.hi95 - sampled.lo95) / 3.92;
  EXPECT_NEAR(scatter.median, sampled.median, 0.15 * sd);
  EXPECT_NEAR(scatter.lo95 / sampled.lo95, 1, 0.28);
  EXPECT_NEAR(scatter.hi95 / sampled.hi95, 1, 0.28);
  EXPECT_EQ(numerics::interval_of(quick.arms[0].log_cuts),
            numerics::interval_of(quick_times(*data)[0].log_cuts));
}

}  // namespace
}  // namespace keenfall::blunting
