// How many cuts it takes an edge to some level. Values only.
#pragma once

#include "numerics/interval.h"

#include <optional>

namespace keenfall::verdicts {

// Cuts until the reading has reached some level.
struct CutsToLevel {
  numerics::Interval cuts;
  bool beyond_what_was_cut = false;  // the median lies past the last checkpoint of every run
  int runs_that_reached = 0;         // runs whose own readings got there

  // Where no run got there, nothing but this is said of the cuts: the lower end of the 95 %
  // interval. It may lie below what was cut, since another edge may last less than these did.
  [[nodiscard]] std::optional<double> at_least() const {
    if (!beyond_what_was_cut || runs_that_reached > 0) return std::nullopt;
    return cuts.lo95;
  }

  bool operator==(const CutsToLevel&) const = default;
};

}  // namespace keenfall::verdicts
