#include "sharpening/estimate.h"

#include <cmath>

namespace keenfall::sharpening {

double Estimate::at(double fraction) const {
  if (lo > 0) return lo * std::pow(hi / lo, fraction);
  return lo + (hi - lo) * fraction;
}

}  // namespace keenfall::sharpening
