// One unit's wear carried on along an exponential path until it reaches a level, by least squares
// on the logs: the simplest analysis of degradation, against which fuller curves can be held.
//
//   y(t) = b exp(a t);   time to y* = log(y* / b) / a
//
// Meeker & Escobar 1998, Statistical Methods for Reliability Data, chapter 13 (approximate
// degradation analysis). A unit at a time: nothing is shared between units.
// Method page: docs/methods/worked-examples.md
#pragma once

#include <optional>
#include <span>

namespace keenfall::numerics {

struct ExponentialPath {
  double level_at_zero = 0;  // b, in the unit of the levels
  double rate = 0;           // a, per unit of time
};

// As many times as levels, at least two, the times not all equal, the levels above zero.
[[nodiscard]] ExponentialPath fit_exponential_path(std::span<const double> times,
                                                   std::span<const double> levels);

// level > 0; nothing where the path does not rise.
[[nodiscard]] std::optional<double> time_to(const ExponentialPath& path, double level);

}  // namespace keenfall::numerics
