// How much steel must go so that a damaged edge is whole again.
//
// In: angles per side in degrees, thickness in mm, damage in um. Out: the area of the cross-section
// to remove in um^2, which is 1e-6 mm^3 per mm of edge. Both sides together. Fails where the angles
// do not make a bevel (1 to 90 degrees, 0.01 steeper than what is behind it), or a length is out of
// its range (thickness 0.001 to 1000 mm, land and chip 0 to 10,000 um). Plane geometry, derived
// here:
//   reset      A = T h + h^2 a t/(t - a) - w^2/(4 t)      a = tan alpha, t = tan theta
//   micro      A = h^2 t m/(m - t) - w^2/(4 t)            m = tan theta_m
// h: how far the apex must rise from where an unworn apex was; T: thickness behind the edge; w: the
// worn land. docs/methods/resharpening.md has the drawing.
#pragma once

#include "base/result.h"
#include "trials/edge.h"

#include <vector>

namespace keenfall::sharpening {

inline constexpr double kLeastStepDeg = 0.01;  // between two planes that are to meet

struct Bevel {
  trials::PerSideAngle bevel_angle;                   // theta
  trials::PerSideAngle primary_angle = {.deg = 1.5};  // alpha: of the faces behind the bevel
  double thickness_behind_edge_mm = 0;                // T, at the shoulder

  bool operator==(const Bevel&) const = default;
};

// As seen under a microscope: the width of the worn land, and the depth of the deepest chip (or
// roll) below the land beside it. Mean depths do not help: the deepest must go.
struct EdgeDamage {
  double land_um = 0;
  double deepest_chip_um = 0;

  bool operator==(const EdgeDamage&) const = default;
};

// Everything about them that cannot be worked with; empty: nothing.
[[nodiscard]] std::vector<base::Problem> problems_of(const Bevel& bevel, const EdgeDamage& damage);

// w/(2 t): how far the land lies below an unworn apex.
[[nodiscard]] double land_recession_um(double land_um, trials::PerSideAngle bevel_angle);

// The land's recession and the chip below it.
[[nodiscard]] double apex_rise_um(const EdgeDamage& damage, trials::PerSideAngle bevel_angle);

struct SteelToRemove {
  double area_um2 = 0;
  double apex_rise_um = 0;
  double thickness_after_mm = 0;  // behind the edge: of the bevel, or at the micro-bevel's shoulder

  bool operator==(const SteelToRemove&) const = default;
};

// The whole bevel moves back, its angle kept: the thickness behind the edge grows.
[[nodiscard]] base::Result<SteelToRemove> reset_bevel(const Bevel& bevel, const EdgeDamage& damage);

// A steeper micro-bevel takes the damage away, the bevel stays. Refused also where it would reach
// beyond the shoulder.
[[nodiscard]] base::Result<SteelToRemove> set_micro_bevel(const Bevel& bevel,
                                                          trials::PerSideAngle micro_angle,
                                                          const EdgeDamage& damage);

}  // namespace keenfall::sharpening
