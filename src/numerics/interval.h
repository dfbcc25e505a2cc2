// Draws summarised: their middle and the 90 % and 95 % equal-tailed intervals.
#pragma once

namespace keenfall::numerics {

struct Interval {
  double median = 0;
  double lo90 = 0;
  double hi90 = 0;
  double lo95 = 0;
  double hi95 = 0;

  bool operator==(const Interval&) const = default;
};

}  // namespace keenfall::numerics
