// Media and finishes to begin with, each number with its source and trust mark.
//
// Clean and gritty matting stand for any clean and any gritty stock: their numbers are guesses, or
// tuned so that simulated edges last as practice reports, and only the product of wear rate, load
// and sliding can be seen in a trial. Nothing was measured on matting. Table and tuning:
// docs/methods/apex.md
#pragma once

#include "materials/abrasion_resistance.h"
#include "materials/microstructure.h"
#include "wear/cutting_work.h"
#include "wear/edge_line.h"

#include <span>
#include <string>

namespace keenfall::wear {

// A medium before the steel is known.
struct AbrasiveMedium {
  std::string name;
  double abrasive_hv = 0;  // of the hardest that is fine and plentiful in it
  double groove_width_um = 0;
  double resistance_ratio_cap = materials::kResistanceRatioCap.typical;
  // Of a body of resistance 1 (700 HV under an abrasive so hard that its hardness does not matter).
  double reference_wear_rate_mm3_per_newton_metre = 0;
  CutMedium acts;  // but for the wear rate, which hangs on the steel

  bool operator==(const AbrasiveMedium&) const = default;
};

// "new sisal matting" (clean) and "uplifted sisal matting" (gritty), in this order. By name, with
// those of a person's own file: workbench/apex_catalogue.h.
[[nodiscard]] std::span<const AbrasiveMedium> known_media();

[[nodiscard]] CutMedium medium_for(const AbrasiveMedium& medium,
                                   const materials::Microstructure& steel);

// Flow stress from the hardness of the whole, t* from the toughness.
[[nodiscard]] ApexSteel apex_steel(const materials::Microstructure& steel,
                                   double flaw_constant = 0.10);

// Land 0.5 um and teeth of 0.6 um every 8 um; 0.8, 6 and 28. Guesses.
[[nodiscard]] EdgeFinish fine_finish();
[[nodiscard]] EdgeFinish coarse_finish();

}  // namespace keenfall::wear
