// How long an edge lasted by a pass-or-fail test, where nobody read a number: it still passed after
// so many cuts and had failed by so many.
//
// The moment itself is not known, only the interval that holds it. An edge that was never seen to
// fail lasted *at least* so many cuts; one that failed at the first try, at most. Cuts as recorded.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

namespace keenfall::trials {

struct EdgeLife {
  std::string test;                      // "slices newsprint cleanly"; empty: not said
  double lasted_cuts = 0;                // it still passed here; 0: not known to have passed
  std::optional<double> failed_by_cuts;  // it had failed here; absent: never seen to fail
  // What failing means on a blunting curve, where it was said: this many times the start reading.
  std::optional<double> level;
  std::optional<std::string> struck_reason;  // set: struck out, shown but not used
  std::size_t line = 0;                      // where it stands in its table; 0: nowhere

  bool operator==(const EdgeLife&) const = default;
};

}  // namespace keenfall::trials
