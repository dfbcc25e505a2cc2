#include "blunting/times/quick_times.h"

#include "blunting/times/made_times.h"
#include "numerics/summaries.h"

#include <gtest/gtest.h>

namespace keenfall::blunting {
namespace {

numerics::Interval log_ratio_in(const std::vector<ArmTimes>& arms) {
  Draws log_ratio = arms[1].log_cuts;
  for (std::size_t d = 0; d < log_ratio.size(); ++d) log_ratio[d] -= arms[0].log_cuts[d];
  return numerics::interval_of(log_ratio);
}

TEST(QuickTimes, AgreeWithTheSampledPosterior) {
  for (const int runs : {1, 3, 6}) {
    const auto data = prepare_times(testing::made_times({.runs_each = runs}, 8), {});
    const auto fit = fit_times(*data, {.draws = 4000}, {11}, base::threads(2), base::unwatched());
    const numerics::Interval sampled = log_ratio_in(fit->arms);
    const numerics::Interval quick = log_ratio_in(*quick_times(*data));
    const double sd = (sampled.hi95 - sampled.lo95) / 3.92;

    EXPECT_NEAR(quick.median, sampled.median, 0.1 * sd) << runs;
    EXPECT_NEAR(quick.lo95, sampled.lo95, 0.2 * sd) << runs;
    EXPECT_NEAR(quick.hi95, sampled.hi95, 0.2 * sd) << runs;
  }
}

TEST(QuickTimes, AreNotGivenWhereBlocksTieTheArms) {
  const auto data = prepare_times(testing::made_times({.blocks = 2}, 8), {});

  EXPECT_FALSE(quick_times(*data));
}

}  // namespace
}  // namespace keenfall::blunting
