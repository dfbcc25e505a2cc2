// Why slicing needs less force than pushing: the same work of parting, spread over a longer path.
//
// xi is the speed along the edge over the speed across it. Without friction the force points along
// the path; as shares of what pushing straight through needs (toughness R times width w):
//   across 1 / (1 + xi^2),  along xi / (1 + xi^2),  together 1 / sqrt(1 + xi^2).
// Friction limits the gain at large xi. Source: Atkins, Xu & Jeronimidis 2004 (the abstract was
// read; the formulas follow from the work done).
#pragma once

namespace keenfall::wear {

struct SlicingForce {
  double across_ratio = 0;
  double along_ratio = 0;
  double together_ratio = 0;
};

// slice_push_ratio: xi, 0 or more.
[[nodiscard]] SlicingForce slicing_force(double slice_push_ratio);

// R w in N, from a toughness in J/m^2 and a width in mm.
[[nodiscard]] double pushing_force_newton(double toughness_joule_per_m2, double width_mm);

}  // namespace keenfall::wear
