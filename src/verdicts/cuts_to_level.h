// How many cuts it takes an edge to some level. Values only.
#pragma once

#include "numerics/interval.h"

namespace keenfall::verdicts {

// Cuts until the reading has reached some level.
struct CutsToLevel {
  numerics::Interval cuts;
  bool beyond_what_was_cut = false;  // the median lies past the last checkpoint of every run
  int runs_that_reached = 0;         // runs whose own readings got there

  bool operator==(const CutsToLevel&) const = default;
};

}  // namespace keenfall::verdicts
