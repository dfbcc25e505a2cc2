// How much steel a pass takes away, and how that falls off as the stone glazes.
//
// Preston 1927 and Archard 1953 (from memory): volume goes with force times path. Per pass of a
// fresh stone
//   v = k0 e/R F s     mm^3; k0 in mm^3/(N m), F in N, s in m, R of materials/abrasion_resistance.h
// and n passes after dressing
//   V(n) = v [k n + (1 - k) n_g (1 - exp(-n/n_g))],   n_g = n_0/(1 + b V_c max(0, H_c/H_a - 0.9))
// k: what a glazed stone keeps of its rate. That carbides harder than the grain blunt it is sound;
// the form of n_g is a guess, and k0, n_0, b and k are tuned. docs/methods/resharpening.md.
#pragma once

#include "base/result.h"
#include "materials/abrasion_resistance.h"

#include <optional>

namespace keenfall::sharpening {

// Of one steel on one stone; all above zero but carbide_volume_fraction and blunt_share_fraction,
// which are from 0 to 1.
struct RemovalConstants {
  double wear_mm3_per_newton_m = 2e-3;   // k0
  double glazing_passes = 120;           // n_0
  double glazing_by_hard_carbides = 20;  // b
  double resistance_ratio_cap = materials::kResistanceRatioCap.typical;
  double matrix_hv = 0;
  double carbide_volume_fraction = 0;  // V_c
  double carbide_hv = 0;               // H_c
  double carbide_diameter_um = 0;
  double abrasive_hv = 0;  // H_a
  double groove_width_um = 0;
  double cutting_power_ratio = 1;   // e
  double blunt_share_fraction = 1;  // k
  // Of passes that were counted; k0 then follows from them (counted_strokes.h).
  double counted_mm3 = 0;         // 0: none were counted
  double later_stroke_ratio = 1;  // force times path of later strokes, of those counted

  bool operator==(const RemovalConstants&) const = default;
};

struct Stroke {
  double force_newton = 10;
  double length_mm = 120;

  bool operator==(const Stroke&) const = default;
};

struct CuttingRate {
  double fresh_mm3_per_pass = 0;
  double blunt_share_fraction = 1;
  double glazing_passes = 0;  // n_g

  bool operator==(const CuttingRate&) const = default;
};

[[nodiscard]] CuttingRate cutting_rate(const RemovalConstants& constants, const Stroke& stroke);

// Volume after so many passes (0 or more) since dressing.
[[nodiscard]] double removed_mm3(const CuttingRate& rate, double passes);

// The passes that remove a volume (0 or more), with the stone dressed each time that many passes
// are done, or never. Passes are counted in fractions. Refused where a stone that keeps nothing of
// its rate stops cutting before the volume is gone.
[[nodiscard]] base::Result<double> passes_to_remove(
    const CuttingRate& rate, double volume_mm3, const std::optional<double>& dress_every_passes);

}  // namespace keenfall::sharpening
