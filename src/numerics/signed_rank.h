// Ranks of paired and of unpaired differences: Wilcoxon's signed-rank test, and the shift between
// two groups with its distribution-free interval (Hodges & Lehmann).
//
// Signed ranks: differences of zero are left out, ties share their mean rank; p is exact over all
// signs (Wilcoxon 1945, Biometrics Bull. 1, 80-83; as in R's wilcox.test). The interval is exact
// where no two differences tie and conservative otherwise (Hollander & Wolfe 1999, section 4.3).
// Method page: docs/methods/run-by-run.md
#pragma once

#include <cstddef>
#include <span>

namespace keenfall::numerics {

struct SignedRankTest {
  double rank_sum = 0;          // of the positive differences
  std::size_t differences = 0;  // that are not zero
  double p_two_sided = 1;
  double p_greater = 1;            // against the differences tending above zero
  double smallest_possible_p = 1;  // two-sided
};

// At most 200 differences; none, or all zero, gives p = 1.
[[nodiscard]] SignedRankTest signed_rank_test(std::span<const double> differences);

struct Shift {
  double estimate = 0;  // median of all differences first[i] - second[j]
  double lo95 = 0;
  double hi95 = 0;
};

// Neither group empty; with so few values that no 95 % interval exists it is the whole range.
[[nodiscard]] Shift hodges_lehmann_shift(std::span<const double> first,
                                         std::span<const double> second);

}  // namespace keenfall::numerics
