// An apex worn round, as a circle that touches both faces of the bevel.
//
// In: the radius in um, the angle per side, above 0 and below 90 degrees. Plane geometry, derived
// here; docs/methods/resharpening.md.
#pragma once

#include "trials/edge.h"

namespace keenfall::sharpening {

// r (1/sin theta - 1): how far the round lies below the ideal apex.
[[nodiscard]] double rounded_recession_um(double radius_um, trials::PerSideAngle angle);

// r^2 (cot theta - (pi/2 - theta)): the steel missing to the ideal apex.
[[nodiscard]] double rounded_missing_area_um2(double radius_um, trials::PerSideAngle angle);

// 2 d tan theta: thickness at a depth behind the ideal apex.
[[nodiscard]] double thickness_at_depth_um(double depth_um, trials::PerSideAngle angle);

}  // namespace keenfall::sharpening
