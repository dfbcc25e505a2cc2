// How much of the scatter lies between groups, and how much within them: one-way random effects.
//
//   y(i,j) = mean + group(i) + error(i,j),   group ~ N(0, between), error ~ N(0, within)
//
// By restricted maximum likelihood (REML): groups of one size have the closed form of the analysis
// of variance, cut off at zero; others by a search along the ratio of the two variances (Searle,
// Casella & McCulloch 1992, Variance Components). Used for repeatability: readings of one spot,
// pieces of one steel. Method page: docs/methods/worked-examples.md
#pragma once

#include <span>
#include <vector>

namespace keenfall::numerics {

struct VarianceComponents {
  double mean = 0;
  double mean_standard_error = 0;
  double sd_between = 0;
  double sd_within = 0;
  double log_likelihood = 0;       // restricted
  double share_between = 0;        // of the variance: the intraclass correlation
  double repeatability_limit = 0;  // 1.96 sqrt(2) sd_within (ISO 5725-6:1994): two readings of one
                                   // group differ by less, 95 times in 100
};

// At least two groups, none empty, one of at least two values that are not all equal.
[[nodiscard]] VarianceComponents variance_components(std::span<const std::vector<double>> groups);

}  // namespace keenfall::numerics
