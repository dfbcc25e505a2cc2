// Elastic stress in a sharp wedge whose tip is loaded, and how far its tip bends: to say how much
// load an apex stands before it yields.
//
// Line loads in N per mm of edge, distances from the tip in um, stresses and moduli in MPa.
// Source: elasticity of the wedge (Michell; from memory) and beam theory, derived.
#pragma once

#include "trials/edge.h"

namespace keenfall::wear {

// At the surface, from a sideways load: beam theory, 3 q / (2 x tan^2 angle).
[[nodiscard]] double beam_stress_mpa(trials::PerSideAngle angle,
                                     double line_load_newton_per_mm,
                                     double distance_um);

// The same, exactly: 2 q sin(angle) / (rho (2 angle - sin 2 angle)), rho = x / cos(angle).
[[nodiscard]] double sideways_stress_mpa(trials::PerSideAngle angle,
                                         double line_load_newton_per_mm,
                                         double distance_um);

// In the middle plane, from a load along it: 2 P / (x (2 angle + sin 2 angle)).
[[nodiscard]] double axial_stress_mpa(trials::PerSideAngle angle,
                                      double line_load_newton_per_mm,
                                      double distance_um);

// How far from the tip the surface yields, by beam theory: 3 q / (2 yield stress tan^2 angle).
[[nodiscard]] double yielded_zone_um(trials::PerSideAngle angle,
                                     double line_load_newton_per_mm,
                                     double yield_stress_mpa);

// A wedge cut off at `cut_off_um`, held at `held_at_um` and loaded sideways at its end.
struct BentTip {
  trials::PerSideAngle angle;
  double line_load_newton_per_mm = 0;
  double modulus_mpa = 205000;
  double cut_off_um = 1;
  double held_at_um = 1000;
};
[[nodiscard]] double tip_deflection_um(const BentTip& tip);

}  // namespace keenfall::wear
