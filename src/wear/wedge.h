// The apex seen as a truncated wedge of metal, and what a load does to it: closed forms and roots.
//
// Widths, depths and diameters in um, forces in N, line loads in N per mm of edge, stresses in MPa.
// The section at a distance y behind a land of width w is w + 2 y tan(angle). A bending load F on a
// length l of land, spread at 45 degrees, meets the plastic hinge
//   F y = flow_stress (l + 2 y) (w + 2 y t)^2 / 4
// and, in a section thicker than the transition section t*, the cheaper break
//   F y = flow_stress (l + 2 y) (w + 2 y t)^1.5 sqrt(t*) / 4.
// The wedge gives way at the largest y at which the lesser of both is met: it breaks there if the
// section is thicker than t*, and folds if it is not.
// Source: derived on docs/methods/apex.md from the textbook plastic hinge and from fracture
// strength falling with the root of the section (Atkins, Xu & Jeronimidis 2004 for the group R E /
// k^2).
#pragma once

#include "trials/edge.h"

#include <limits>
#include <optional>

namespace keenfall::wear {

struct Wedge {
  double tangent = 0;         // of the angle per side
  double hardness_ratio = 0;  // pressure that dents the wedge / flow stress

  bool operator==(const Wedge&) const = default;
};

// Above 0, below 90 degrees. The dent pressure is that of a plastic wedge, 1.155 (1 + angle), angle
// in radians (slip lines; Johnson, Contact Mechanics, from memory).
[[nodiscard]] Wedge wedge_of(trials::PerSideAngle angle);

// What of the steel decides how the apex yields or breaks.
struct ApexSteel {
  double flow_stress_mpa = 0;
  // t*: sections thicker than this break before they bend. Infinite: it never chips.
  double transition_section_um = std::numeric_limits<double>::infinity();

  bool operator==(const ApexSteel&) const = default;
};

// 9.81 HV / 3 (Tabor's rule; the third is good to some 10 %).
[[nodiscard]] double flow_stress_mpa(double hardness_hv);

struct BrittleSection {
  double toughness_mpa_sqrt_m = 0;
  double flow_stress_mpa = 0;
  double flaw_constant =
      0.10;  // c_f; 4 / (9 pi 0.3 1.12^2) = 0.38 for a flaw of 0.3 of the section
};

// t* = c_f (K_IC / flow_stress)^2, in um.
[[nodiscard]] double transition_section_um(const BrittleSection& section);

// A force that bends part of the land over, by a contact of a given length along the edge.
struct SidewaysLoad {
  double force_newton = 0;
  double contact_length_um = 0;
};

// How far behind the land the plastic hinge lies: the largest root. None: the hinge is not met.
[[nodiscard]] std::optional<double> fold_height_um(const ApexSteel& steel,
                                                   const Wedge& wedge,
                                                   double land_width_um,
                                                   const SidewaysLoad& load);

// How deep the break lies: the largest root. None: there is none in a section thicker than t*.
[[nodiscard]] std::optional<double> chip_depth_um(const ApexSteel& steel,
                                                  const Wedge& wedge,
                                                  double land_width_um,
                                                  const SidewaysLoad& load);

// The same for a load spread evenly along the edge (twist). Nothing gives way up to
// 2 flow_stress w t, where the hinge lies at w / (2 t); or, with lands above 27/64 t*, up to
// 3 sqrt(3) / 4 flow_stress t sqrt(w t*), where the break lies at w / t.
[[nodiscard]] double twist_threshold_newton_per_mm(const ApexSteel& steel,
                                                   const Wedge& wedge,
                                                   double land_width_um);
[[nodiscard]] std::optional<double> twist_fold_height_um(const ApexSteel& steel,
                                                         const Wedge& wedge,
                                                         double land_width_um,
                                                         double line_load_newton_per_mm);
[[nodiscard]] std::optional<double> twist_chip_depth_um(const ApexSteel& steel,
                                                        const Wedge& wedge,
                                                        double land_width_um,
                                                        double line_load_newton_per_mm);

// A round particle pressed straight onto the land.
struct PressedParticle {
  double force_newton = 0;
  double diameter_um = 0;
};

// The depth d at which the dent carries the force: 2 sqrt(D d) (w + 4/3 t d) = F / dent pressure.
[[nodiscard]] double dent_depth_um(const ApexSteel& steel,
                                   const Wedge& wedge,
                                   double land_width_um,
                                   const PressedParticle& particle);

}  // namespace keenfall::wear
