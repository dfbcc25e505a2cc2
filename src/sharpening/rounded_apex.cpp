#include "sharpening/rounded_apex.h"

#include "base/require.h"

#include <cmath>
#include <numbers>

namespace keenfall::sharpening {

namespace {

double radians_of(trials::PerSideAngle angle) {
  base::require(angle.deg > 0 && angle.deg < 90, "an edge is sharper than a right angle per side");
  return angle.deg * std::numbers::pi / 180;
}

}  // namespace

double rounded_recession_um(double radius_um, trials::PerSideAngle angle) {
  return radius_um * (1 / std::sin(radians_of(angle)) - 1);
}

double rounded_missing_area_um2(double radius_um, trials::PerSideAngle angle) {
  const double theta = radians_of(angle);
  return radius_um * radius_um * (1 / std::tan(theta) - (std::numbers::pi / 2 - theta));
}

double thickness_at_depth_um(double depth_um, trials::PerSideAngle angle) {
  return 2 * depth_um * std::tan(radians_of(angle));
}

}  // namespace keenfall::sharpening
