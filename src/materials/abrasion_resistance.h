// How well a steel resists being abraded, relative to a body of 700 HV under an abrasive so hard
// that its own hardness does not matter.
//
// In: a microstructure, the abrasive's hardness in HV and the width of its grooves in um. Out: a
// resistance without unit; wear volume goes with its inverse. Hard/soft factor after Rabinowicz
// 1977 (from memory):
//   f = 1                        for h = H/H_a < 0.8
//   f = (3/5.3) h^-2.5           for 0.8 <= h < 1.25
//   f = (3/2.43) h^-6            from 1.25 on
// f steps down by 1.1 % at 0.8 and by 0.12 % at 1.25: the published branches do not quite meet.
// Resistance of one phase: R = (H/700)/f. Of the whole (linear mixing, Khrushchov 1974):
//   R = R_m [1 + V_c (kappa - 1) phi],  kappa = min(R_c/R_m, cap),  phi = 1/(1 + (g/d_c)^2)
// phi: carbides smaller than a groove are dug out with the matrix; the idea is Zum Gahr's (1998),
// this form is a guess. The cap stands for carbides that break or come loose; 12 is tuned.
// docs/methods/materials.md.
#pragma once

#include "materials/microstructure.h"
#include "materials/uncertain_constant.h"

namespace keenfall::materials {

// Most that a carbide resists, of its matrix: for stones and media alike.
inline constexpr Estimate kResistanceRatioCap = {12, 6, 20, {"practice", TrustMark::tuned}};

struct AbrasiveAction {
  double abrasive_hv = 0;                                     // above 0
  double groove_width_um = 0;                                 // from 0 on
  double resistance_ratio_cap = kResistanceRatioCap.typical;  // from 1 on

  bool operator==(const AbrasiveAction&) const = default;
};

// Wear of a body over wear of one much softer than the abrasive at equal hardness; in (0, 1].
[[nodiscard]] double hard_soft_factor(double body_hv, double abrasive_hv);

// Of one phase by itself.
[[nodiscard]] double phase_resistance(double body_hv, double abrasive_hv);

// Share of a carbide's resistance that it can lend to its surroundings, 0 to 1.
[[nodiscard]] double carbide_protection(double groove_width_um, double carbide_diameter_um);

// Hardness and diameters above 0; anything else is a fault of ours.
[[nodiscard]] double abrasion_resistance(const Microstructure& steel, const AbrasiveAction& action);

}  // namespace keenfall::materials
