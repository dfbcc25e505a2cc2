#include "verdicts/further_runs.h"

#include "base/require.h"

#include <cmath>
#include <numbers>

namespace keenfall::verdicts {

namespace {

constexpr double kChanceWanted = 0.8;  // docs/methods/further-runs.md

double normal_probability_below(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

}  // namespace

double chance_of_settling(const PresentKnowledge& now, int runs_each) {
  base::require(now.log_ratio_sd > 0 && now.runs_a > 0 && now.runs_b > 0,
                "a prediction needs a spread and runs");
  const auto share = [](int runs) { return 1 / static_cast<double>(runs); };
  const double shrink = (share(now.runs_a + runs_each) + share(now.runs_b + runs_each)) /
                        (share(now.runs_a) + share(now.runs_b));
  const double variance = now.log_ratio_sd * now.log_ratio_sd;
  const double later_sd = std::sqrt(variance * shrink);
  const double free_sd = std::sqrt(variance * (1 - shrink));

  const double half_95 = later_sd * now.half_width_95 / now.log_ratio_sd;
  const double half_90 = later_sd * now.half_width_90 / now.log_ratio_sd;

  const auto chance_below = [&now, free_sd](double bound) {
    if (free_sd <= 0) return now.log_ratio < bound ? 1.0 : 0.0;
    return normal_probability_below((bound - now.log_ratio) / free_sd);
  };
  // Settled: |d'| above half_95 (longer or shorter), or below log M - half_90 (practically the
  // same).
  const double inside = std::log(now.worth_it_margin) - half_90;
  if (inside >= half_95) return 1;
  const double apart = chance_below(-half_95) + 1 - chance_below(half_95);
  const double same = inside > 0 ? chance_below(inside) - chance_below(-inside) : 0;
  return apart + same;
}

std::optional<int> further_runs_to_settle(const PresentKnowledge& now) {
  for (int runs = 1; runs <= kMostFurtherRuns; ++runs) {
    if (chance_of_settling(now, runs) >= kChanceWanted) return runs;
  }
  return std::nullopt;
}

}  // namespace keenfall::verdicts
