// What two arms of so many runs each can tell, in closed form: a first answer, at once.
//
// Runs whose logs scatter normally, t intervals of the log ratio with the pooled scatter (2n - 2
// degrees of freedom), the rules of the verdicts. No curves, readings, blocks or priors: by how
// much the quick engine's answers differ for those is on docs/methods/planning.md. Power of two
// one-sided tests: Schuirmann 1987; integrated here over the scatter that may be seen.
#pragma once

#include "verdicts/verdict.h"

#include <array>
#include <cstddef>
#include <optional>

namespace keenfall::planning {

struct TwoSamples {
  int runs_each = 6;             // 2 or more
  double log_sd = 0.2;           // of one run, reading it included; above 0
  double true_ratio = 1;         // above 0
  double worth_it_margin = 1.5;  // above 1

  bool operator==(const TwoSamples&) const = default;
};

// By verdicts::Verdict; they add up to 1.
using VerdictProbabilities = std::array<double, 8>;

[[nodiscard]] VerdictProbabilities two_sample_chances(const TwoSamples& samples);

// The chance of any verdict but not settled.
[[nodiscard]] double chance_of_settling(const TwoSamples& samples);

// The factor by which the 95 % interval reaches either way of the ratio that is found, where the
// scatter that is seen is the true one.
[[nodiscard]] double half_width_95(int runs_each, double log_sd);

// The smallest ratio that shows as longer in four of five such trials; absent: none up to 100.
[[nodiscard]] std::optional<double> smallest_ratio_shown(int runs_each, double log_sd);

// The fewest runs, 2 to `most`, with a chance of settling of 80 % or more; samples.runs_each is not
// heeded.
[[nodiscard]] std::optional<int> fewest_runs_to_settle(TwoSamples samples, int most);

// The same for calling edges that last equally long practically the same.
[[nodiscard]] std::optional<int> fewest_runs_to_call_the_same(TwoSamples samples, int most);

}  // namespace keenfall::planning
