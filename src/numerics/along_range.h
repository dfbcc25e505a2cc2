// A place on the way from one end of a range to the other.
#pragma once

namespace keenfall::numerics {

// share 0: lo, 1: hi; evenly by ratio where lo is above zero, else evenly by difference.
[[nodiscard]] double along_range(double lo, double hi, double share);

}  // namespace keenfall::numerics
