// Means, quantiles and equal-tailed intervals of a set of draws.
#pragma once

#include "numerics/interval.h"

#include <span>
#include <vector>

namespace keenfall::numerics {

// At least one value.
[[nodiscard]] double mean_of(std::span<const double> values);

// Sample variance (divisor n - 1); at least two values.
[[nodiscard]] double variance_of(std::span<const double> values);

// `sorted` ascending, not empty; 0 <= probability <= 1. Linear interpolation of order statistics
// (Hyndman & Fan 1996, definition 7, the default of R's quantile).
[[nodiscard]] double quantile_of_sorted(std::span<const double> sorted, double probability);

[[nodiscard]] double median_of(std::vector<double> values);

// Equal-tailed intervals; not empty.
[[nodiscard]] Interval interval_of(std::vector<double> draws);

// Each field through exp: intervals of a log are intervals of the thing itself.
[[nodiscard]] Interval exp_of(const Interval& log_interval);

}  // namespace keenfall::numerics
