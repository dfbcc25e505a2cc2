// The most that is taken for an angle per side, in tables and of simulated edges alike: beyond it
// lies an inclusive angle in the wrong place (90 degrees inclusive).
#pragma once

namespace keenfall::trials {

inline constexpr double kWidestAnglePerSideDeg = 45;

}  // namespace keenfall::trials
