#include "sharpening/removal.h"

#include "base/plain_number.h"
#include "base/require.h"
#include "materials/abrasion_resistance.h"

#include <algorithm>
#include <cmath>

namespace keenfall::sharpening {

namespace {

constexpr double kMmPerM = 1000;
constexpr double kBluntingFromHardnessRatio = 0.9;  // of carbide over grain; a guess

// k n + (1 - k) n_g (1 - exp(-n/n_g)): passes a stone that stays fresh would need.
double fresh_passes(const CuttingRate& rate, double passes) {
  const double k = rate.blunt_share_fraction;
  const double glazed = rate.glazing_passes * -std::expm1(-passes / rate.glazing_passes);
  return k * passes + (1 - k) * glazed;
}

// The inverse, by Newton's method from the left: the function is concave, so that each step stays
// below the root and the steps grow to it.
base::Result<double> passes_without_dressing(const CuttingRate& rate, double fresh) {
  const double k = rate.blunt_share_fraction;
  if (k == 0 && fresh >= rate.glazing_passes) {
    return base::failed(
        {.kind = base::ProblemKind::unsuitable_data,
         .sentence = "a stone that keeps nothing of its rate stops cutting after what " +
                     base::with_figures(rate.glazing_passes, 2) + " fresh passes take away",
         .accepted = "dressing it more often"});
  }
  double passes = fresh;
  constexpr int kMostSteps = 200;
  for (int i = 0; i < kMostSteps; ++i) {
    const double slope = k + (1 - k) * std::exp(-passes / rate.glazing_passes);
    const double next = passes + (fresh - fresh_passes(rate, passes)) / slope;
    if (!(next > passes)) break;
    passes = next;
  }
  return passes;
}

}  // namespace

CuttingRate cutting_rate(const RemovalConstants& constants, const Stroke& stroke) {
  materials::Microstructure steel;
  steel.matrix_hv = constants.matrix_hv;
  steel.carbide_volume_fraction = constants.carbide_volume_fraction;
  steel.carbide_hv = constants.carbide_hv;
  steel.carbide_diameter_um = constants.carbide_diameter_um;
  const double resistance =
      abrasion_resistance(steel,
                          {.abrasive_hv = constants.abrasive_hv,
                           .groove_width_um = constants.groove_width_um,
                           .resistance_ratio_cap = constants.resistance_ratio_cap});
  const double carbide_over_grain = constants.carbide_hv / constants.abrasive_hv;
  const double blunting = constants.glazing_by_hard_carbides * constants.carbide_volume_fraction *
                          std::max(0.0, carbide_over_grain - kBluntingFromHardnessRatio);
  return {.fresh_mm3_per_pass = constants.wear_mm3_per_newton_m * constants.cutting_power_ratio /
                                resistance * stroke.force_newton * stroke.length_mm / kMmPerM,
          .blunt_share_fraction = constants.blunt_share_fraction,
          .glazing_passes = constants.glazing_passes / (1 + blunting)};
}

double removed_mm3(const CuttingRate& rate, double passes) {
  base::require(passes >= 0, "passes are counted from zero");
  return rate.fresh_mm3_per_pass * fresh_passes(rate, passes);
}

base::Result<double> passes_to_remove(const CuttingRate& rate,
                                      double volume_mm3,
                                      const std::optional<double>& dress_every_passes) {
  base::require(rate.fresh_mm3_per_pass > 0 && rate.glazing_passes > 0, "a stone cuts");
  base::require(volume_mm3 >= 0, "a volume is zero or more");
  double fresh = volume_mm3 / rate.fresh_mm3_per_pass;
  if (!dress_every_passes) return passes_without_dressing(rate, fresh);
  base::require(*dress_every_passes > 0, "a stone is dressed after some passes");
  const double fresh_each = fresh_passes(rate, *dress_every_passes);
  const double whole = std::floor(fresh / fresh_each);
  fresh -= whole * fresh_each;
  return passes_without_dressing(rate, std::max(0.0, fresh)).transform([&](double rest) {
    return whole * *dress_every_passes + rest;
  });
}

}  // namespace keenfall::sharpening
