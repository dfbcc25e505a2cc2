#include "materials/abrasion_resistance.h"

#include "base/require.h"

#include <algorithm>
#include <cmath>

namespace keenfall::materials {

namespace {

constexpr double kReferenceHv = 700;
constexpr double kTransitionFrom = 0.8;  // body over abrasive
constexpr double kSoftAbrasiveFrom = 1.25;

}  // namespace

double hard_soft_factor(double body_hv, double abrasive_hv) {
  base::require(body_hv > 0 && abrasive_hv > 0, "hardness is above zero");
  const double h = body_hv / abrasive_hv;
  if (h < kTransitionFrom) return 1;
  if (h < kSoftAbrasiveFrom) return 3 / 5.3 * std::pow(h, -2.5);
  return 3 / 2.43 * std::pow(h, -6);
}

double phase_resistance(double body_hv, double abrasive_hv) {
  return body_hv / kReferenceHv / hard_soft_factor(body_hv, abrasive_hv);
}

double carbide_protection(double groove_width_um, double carbide_diameter_um) {
  base::require(groove_width_um >= 0 && carbide_diameter_um > 0, "widths are lengths");
  const double grooves_per_carbide = groove_width_um / carbide_diameter_um;
  return 1 / (1 + grooves_per_carbide * grooves_per_carbide);
}

double abrasion_resistance(const Microstructure& steel, const AbrasiveAction& action) {
  base::require(action.resistance_ratio_cap >= 1, "a cap does not soften carbides");
  base::require(steel.carbide_volume_fraction >= 0 && steel.carbide_volume_fraction <= 1,
                "a fraction is from 0 to 1");
  const double matrix = phase_resistance(steel.matrix_hv, action.abrasive_hv);
  const double carbide = phase_resistance(steel.carbide_hv, action.abrasive_hv);
  const double kappa = std::min(carbide / matrix, action.resistance_ratio_cap);
  const double phi = carbide_protection(action.groove_width_um, steel.carbide_diameter_um);
  return matrix * (1 + steel.carbide_volume_fraction * (kappa - 1) * phi);
}

}  // namespace keenfall::materials
