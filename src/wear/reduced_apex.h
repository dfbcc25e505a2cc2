// The simulator in a few numbers: how fast pure wear goes, how fast hits begin to blunt, and how
// much that scatters.
//
//   b(x) = sqrt(1 + x / tau_w) + D (1 - exp(-x / tau_c))     push reading / its start
// describes simulated curves to about 1 %; at its start the second term rises with slope
//   S = (lambda / w0) E[A],   A: land that one hit adds along the edge, as a push reading feels it,
// and over a length L and x cuts the rise through hits scatters by
//   CV^2 = E[A^2] / (E[A]^2 lambda L x)   (compound Poisson).
// D and tau_c cannot be told apart before the rise saturates: S is what a curve can give. A is
// taken from single hits on a fresh edge, so S is some 3 to 14 % above what a simulation shows
// after a few cuts. Source: derived on docs/methods/apex.md.
#pragma once

#include "base/seed.h"
#include "wear/simulated_edge.h"

namespace keenfall::wear {

struct ReducedApex {
  double wear_life_cuts = 0;                // tau_w; infinite where nothing wears
  double hit_slope_per_cut = 0;             // S
  double hit_slope_standard_error = 0;      // of the Monte-Carlo mean
  double land_per_hit_um_mm = 0;            // E[A]
  double squared_land_per_hit_um2_mm2 = 0;  // E[A^2]
};

struct SingleHits {
  int hits = 100000;  // 2 or more
  base::Seed seed;
};

// Of the simulation's edge, steel and rules in this medium; its schedule is not used.
[[nodiscard]] ReducedApex reduced_apex(const ApexSimulation& simulation,
                                       const CutMedium& medium,
                                       const SingleHits& hits);

// Coefficient of variation of the rise through hits, over a length of edge.
struct HitScatterAsked {
  double hits_per_mm_cut = 0;
  double edge_length_mm = 0;
  double cuts = 0;
};
[[nodiscard]] double hit_scatter_cv(const ReducedApex& apex, const HitScatterAsked& asked);

// What one hit adds to a push reading, integrated along the edge, in um mm.
[[nodiscard]] double felt_land_um_mm(const HitDamage& damage,
                                     const Wedge& wedge,
                                     const DamageRules& rules,
                                     const ReadingRules& reading);

}  // namespace keenfall::wear
