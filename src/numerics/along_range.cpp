#include "numerics/along_range.h"

#include <cmath>

namespace keenfall::numerics {

double along_range(double lo, double hi, double share) {
  if (lo > 0) return lo * std::pow(hi / lo, share);
  return lo + (hi - lo) * share;
}

}  // namespace keenfall::numerics
