// How many more runs of each arm would probably settle a comparison.
//
// With n more runs each, the variance of the log ratio shrinks in proportion to the runs, and the
// estimate moves from where it stands by what the shrinking leaves free: a normal prediction,
// d' ~ N(d, v - v'). The chance that the new intervals settle the verdict is then a sum of normal
// probabilities (assurance: O'Hagan, Stevens & Campbell 2005). Half-widths keep their present size
// in standard deviations: what is not known of the scatter is in the posterior sd already. Method
// page: docs/methods/further-runs.md
#pragma once

#include <optional>

namespace keenfall::verdicts {

struct PresentKnowledge {
  double log_ratio = 0;      // posterior median
  double log_ratio_sd = 0;   // posterior sd, above 0
  double half_width_90 = 0;  // of the interval that decides, in logs
  double half_width_95 = 0;
  int runs_a = 1;
  int runs_b = 1;
  double worth_it_margin = 1.5;
};

// Chance, 0 to 1, that `runs_each` more runs of either arm settle the comparison.
[[nodiscard]] double chance_of_settling(const PresentKnowledge& now, int runs_each);

inline constexpr int kMostFurtherRuns = 40;

// The smallest number, up to kMostFurtherRuns, with at least an 80 % chance; absent when none has.
[[nodiscard]] std::optional<int> further_runs_to_settle(const PresentKnowledge& now);

}  // namespace keenfall::verdicts
