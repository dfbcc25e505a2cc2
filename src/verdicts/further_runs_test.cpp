#include "verdicts/further_runs.h"

#include "numerics/random.h"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>

namespace keenfall::verdicts {
namespace {

// A comparison of 4 runs each with run scatter 0.25, decided by intervals of 1.64 and 1.96 sds.
PresentKnowledge a_comparison(double log_ratio) {
  const double sd = 0.25 * std::sqrt(2.0 / 4);
  return {.log_ratio = log_ratio,
          .log_ratio_sd = sd,
          .half_width_90 = 1.645 * sd,
          .half_width_95 = 1.96 * sd,
          .runs_a = 4,
          .runs_b = 4,
          .scatter_degrees_of_freedom = 1000,
          .worth_it_margin = 1.5};
}

// The truth drawn from what is known, n more runs simulated, means and known scatter judged again.
double simulated_chance(const PresentKnowledge& now, int more, double run_scatter) {
  numerics::RandomStream random({31}, static_cast<std::uint64_t>(more));
  const int trials = 40000;
  int settled = 0;
  for (int t = 0; t < trials; ++t) {
    const double truth = now.log_ratio + now.log_ratio_sd * random.normal();
    const double later_error = run_scatter * std::sqrt(2.0 / more);
    const double later_mean = truth + later_error * random.normal();
    const double before = 1 / (now.log_ratio_sd * now.log_ratio_sd);
    const double gained = 1 / (later_error * later_error);
    const double mean = (before * now.log_ratio + gained * later_mean) / (before + gained);
    const double sd = std::sqrt(1 / (before + gained));
    const bool apart = std::abs(mean) > 1.96 * sd;
    const bool same = std::abs(mean) + 1.645 * sd < std::log(now.worth_it_margin);
    settled += apart || same ? 1 : 0;
  }
  return static_cast<double>(settled) / trials;
}

TEST(FurtherRuns, HaveTheChanceThatSimulatedFurtherRunsHave) {
  for (const double log_ratio : {0.0, 0.2, 0.3}) {
    for (const int more : {2, 6, 12}) {
      const PresentKnowledge now = a_comparison(log_ratio);

      EXPECT_NEAR(chance_of_settling(now, more), simulated_chance(now, more, 0.25), 0.012)
          << log_ratio << " " << more;
    }
  }
}

TEST(FurtherRuns, AreTheFewestThatProbablySettleIt) {
  const PresentKnowledge now = a_comparison(0.2);
  const auto runs = further_runs_to_settle(now);

  ASSERT_TRUE(runs);
  EXPECT_GE(chance_of_settling(now, *runs), 0.8);
  if (*runs > 1) {
    EXPECT_LT(chance_of_settling(now, *runs - 1), 0.8);
  }
}

TEST(FurtherRuns, AreTooManyWhereTheMarginIsTooNarrow) {
  PresentKnowledge now = a_comparison(0.05);
  now.worth_it_margin = 1.05;

  EXPECT_EQ(further_runs_to_settle(now), std::nullopt);
}

TEST(FurtherRuns, NeedASpread) {
  PresentKnowledge now = a_comparison(0);
  now.log_ratio_sd = 0;

  EXPECT_THROW((void)chance_of_settling(now, 3), std::logic_error);
}

}  // namespace
}  // namespace keenfall::verdicts
