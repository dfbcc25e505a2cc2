#include "blunting/inference/fitted_simulation.h"
#include "numerics/summaries.h"

#include <gtest/gtest.h>

#include <cmath>
#include <utility>

namespace keenfall::blunting {
namespace {

numerics::Interval log_ratio_of_steels(const BluntingFit& fit) {
  Draws ratio = fit.arms[0].log_half_keenness_steel;
  for (std::size_t d = 0; d < ratio.size(); ++d) ratio[d] -= fit.arms[1].log_half_keenness_steel[d];
  return numerics::interval_of(std::move(ratio));
}

bool claims_a_difference(const numerics::Interval& log_ratio) {
  return log_ratio.lo95 > 0 || log_ratio.hi95 < 0;
}

// The median in units of the interval's own standard error: 1 on average (root mean square) where
// intervals are as wide as they should be.
double squared_in_own_errors(const numerics::Interval& log_ratio) {
  const double error = (log_ratio.hi95 - log_ratio.lo95) / (2 * 1.96);
  return log_ratio.median * log_ratio.median / (error * error);
}

// Two steels that are equal, three pieces of each, three runs a piece; pieces of one steel differ
// by 30 % (log sd 0.3), runs of one piece by 15 %. Counting the nine runs as runs of one blade
// takes the scatter of three pieces for that of nine: by hand, the error of the log ratio is then
// put at 0.335 sqrt(2/9) = 0.158 where it is sqrt(2 (0.09 + 0.0225/3) / 3) = 0.255, so that 22 % of
// the 95 % intervals miss 0. With specimens in the model at most 5 % should, within 2.6 binomial
// errors.
TEST(Specimens, KeepClaimsAboutSteelsHonestWhereRunsCountedAlikeWouldNot) {
  constexpr int kTrials = 20;
  int false_with_specimens = 0;
  int false_without = 0;
  double squares_with_specimens = 0;
  double squares_without = 0;
  ModelSpec without = default_model();
  without.specimens = false;
  for (std::uint64_t seed = 0; seed < kTrials; ++seed) {
    const trials::Trial trial = simulated(
        {.runs_each = 9, .run_scatter = 0.15, .specimens_each = 3, .specimen_scatter = 0.3},
        900 + seed);
    const numerics::Interval with =
        log_ratio_of_steels(fitted(trial, default_model(), base::threads(2)).fit);
    const numerics::Interval naive = log_ratio_of(fitted(trial, without, base::threads(2)).fit);
    if (claims_a_difference(with)) ++false_with_specimens;
    if (claims_a_difference(naive)) ++false_without;
    squares_with_specimens += squared_in_own_errors(with);
    squares_without += squared_in_own_errors(naive);
  }

  RecordProperty("false_with_specimens", false_with_specimens);
  RecordProperty("false_without", false_without);
  EXPECT_LE(false_with_specimens / double{kTrials}, 0.05 + 2.6 * std::sqrt(0.05 * 0.95 / kTrials));
  EXPECT_GT(false_without, false_with_specimens);
  // By hand (0.255 / 0.158) squared = 2.6 without; half of that leaves room for 20 trials.
  EXPECT_GE(squares_without / kTrials, 1.3);
  EXPECT_GE(squares_without, 1.5 * squares_with_specimens);
}

}  // namespace
}  // namespace keenfall::blunting
