// Hits of the edge by hard particles in the medium: how often, how hard, and what one does.
//
// Hits come at random along the edge and over the cuts (a Poisson process). A particle of diameter
// D (lognormal) is pushed back into the medium by a force of mean (pi / 4) D^2 x pushback pressure,
// exponentially scattered, and strikes at a normally scattered angle to the edge's plane.
// A hit dents the land, folds it over, or breaks it out: see wedge.h. A break takes its dent along.
// Widths in um, forces in N. Source: derived on docs/methods/apex.md; no source was found for it.
#pragma once

#include "numerics/random.h"
#include "wear/wedge.h"

namespace keenfall::wear {

struct HardParticles {
  double hits_per_mm_cut = 0;  // mean, per mm of edge and cut
  double median_diameter_um = 60;
  double diameter_spread_ratio = 1.8;  // geometric standard deviation, 1 or more
  double pushback_pressure_mpa = 20;   // at which the medium gives way under the particle
  double angle_rms_deg = 25;           // of the hits to the plane of the edge

  bool operator==(const HardParticles&) const = default;
};

struct ParticleHit {
  double position_um = 0;  // along the edge
  double diameter_um = 0;
  double along_force_newton = 0;  // in the plane of the edge: dents
  double side_force_newton = 0;   // across it: folds or breaks

  bool operator==(const ParticleHit&) const = default;
};

[[nodiscard]] ParticleHit random_hit(const HardParticles& particles,
                                     double edge_length_um,
                                     numerics::RandomStream& random);

// How wide chips are for their depth, and how much land they leave.
struct DamageRules {
  double chip_land_gain = 1;   // land added, in widths of the section where the break lies
  double chip_aspect = 4;      // length of a chip / its depth, beyond the contact's length
  double fold_life_cuts = 40;  // a fold breaks off after so many cuts
  bool operator==(const DamageRules&) const = default;
};

// A notch or fold that falls off as a parabola to both sides of the hit.
struct Trace {
  double depth_um = 0;
  double half_length_um = 0;

  bool operator==(const Trace&) const = default;
};

// The depths that are 0 did not happen. A chip excludes the others.
struct HitDamage {
  Trace dent;
  Trace fold;
  Trace chip;

  bool operator==(const HitDamage&) const = default;
};

struct StruckApex {
  ApexSteel steel;
  Wedge wedge;
  DamageRules rules;
};

[[nodiscard]] HitDamage damage_of(const ParticleHit& hit,
                                  const StruckApex& apex,
                                  double land_width_um);

// Mean number of hits per mm of edge and cut, from how much grit a cut of a round bar meets: a
// plane cut through n spheres per mm^3 meets n E[D] of them per mm^2 (geometry). The diameters of
// hits are taken for those of the grit, though a plane meets large particles more often than small
// ones.
struct GritDose {
  double grit_mass_fraction = 0;
  double medium_density_g_per_cm3 = 1;
  double section_mm2 = 0;                   // that one cut parts
  double edge_used_mm = 0;                  // over which the hits spread
  double mineral_density_g_per_cm3 = 2.65;  // quartz
};
[[nodiscard]] double hits_per_mm_cut(const GritDose& dose, const HardParticles& particles);

}  // namespace keenfall::wear
