// Two groups compared by rearranging: how often would chance alone, dealing the same values out to
// two groups of these sizes, set the groups at least as far apart as they are?
//
// Every arrangement is counted where there are few enough; else random ones, from a seed, with the
// error of that count. Two-sided: at least as far from the middle, on either side. No assumption
// about the shape of the scatter, only that under "no influence" every arrangement is as likely.
// Fisher 1935 (The Design of Experiments), Pitman 1937 (J. R. Stat. Soc. Suppl. 4, 119-130).
// Method page: docs/methods/run-by-run.md
#pragma once

#include "base/seed.h"

#include <cstddef>
#include <span>
#include <vector>

namespace keenfall::numerics {

struct Rearranging {
  double most_counted = 2e6;  // arrangements, above which random ones are taken
  int random_count = 20000;   // how many random ones
  base::Seed seed{1};
};

struct RearrangementTest {
  double p_two_sided = 1;
  bool exact = true;
  double monte_carlo_error = 0;    // standard error of p; 0 when exact
  double smallest_possible_p = 0;  // 1 / arrangements, twice that where sizes are equal
};

// Of the difference of means. Neither group empty.
[[nodiscard]] RearrangementTest rearrange_means(std::span<const double> first,
                                                std::span<const double> second,
                                                const Rearranging& how);

// Of the rank sum (Wilcoxon's test), ties sharing their mean rank. Neither group empty.
[[nodiscard]] RearrangementTest rearrange_ranks(std::span<const double> first,
                                                std::span<const double> second,
                                                const Rearranging& how);

// Ranks from 1, ties sharing their mean.
[[nodiscard]] std::vector<double> mid_ranks(std::span<const double> values);

// The number of ways to choose k of n, as a double (exact up to 2^53).
[[nodiscard]] double combinations(std::size_t n, std::size_t k);

}  // namespace keenfall::numerics
