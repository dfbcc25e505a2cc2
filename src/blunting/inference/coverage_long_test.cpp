#include "blunting/inference/fitted_simulation.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::blunting {
namespace {

// A short coverage check: 60 trials each at 3 and 6 runs, true ratio 1. Bounds: more than 2.6
// binomial standard errors below 93 % coverage, or above 5 % false answers, would fail. The long
// tables come later.
TEST(FullFit, CoversTheTruthAndSeldomSeesADifferenceThatIsNotThere) {
  int covered = 0;
  int false_answers = 0;
  int trials_run = 0;
  for (const int runs_each : {3, 6}) {
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
      const Fitted found = fitted(
          simulated({.runs_each = runs_each}, 100 + seed), default_model(), base::threads(2));
      const numerics::Interval ratio = log_ratio_of(found.fit);
      const bool covers = ratio.lo95 <= 0 && 0 <= ratio.hi95;
      ++trials_run;
      if (found.fit.diagnostics.usable && covers) ++covered;
      if (!covers) ++false_answers;
    }
  }

  const double n = trials_run;
  EXPECT_GE(covered / n, 0.93 - 2.6 * std::sqrt(0.93 * 0.07 / n));
  EXPECT_LE(false_answers / n, 0.05 + 2.6 * std::sqrt(0.05 * 0.95 / n));
}

}  // namespace
}  // namespace keenfall::blunting
