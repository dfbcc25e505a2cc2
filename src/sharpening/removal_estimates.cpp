#include "sharpening/removal_estimates.h"

#include "numerics/along_range.h"

namespace keenfall::sharpening {

namespace {

using enum materials::TrustMark;

constexpr materials::Provenance kTunedToPractice = {"practice", tuned};

Estimate of_steel(double typical, const materials::PlausibleRange& range) {
  return {.typical = typical, .lo = range.lo, .hi = range.hi, .from = range.from};
}

}  // namespace

// A table rather than a procedure.
// NOLINTNEXTLINE(readability-function-size)
std::vector<UncertainConstant> uncertain_constants(const materials::Microstructure& steel,
                                                   const Stone& stone) {
  using C = RemovalConstants;
  // Two-body abrasion: 5e-3 to 5e-2 without unit (recalled) over 6.9 GPa is 0.7e-3 to 7e-3.
  constexpr Estimate kWear = {2e-3, 0.7e-3, 7e-3, {"two-body-memory", tuned}};
  return {
      {&C::wear_mm3_per_newton_m,
       "steel worn off by force and path",
       "mm³/(N m)",
       BelongsTo::model,
       kWear},
      {&C::glazing_passes,
       "passes in which a stone glazes",
       "",
       BelongsTo::model,
       {120, 60, 240, kTunedToPractice}},
      {&C::glazing_by_hard_carbides,
       "how hard carbides speed that up",
       "",
       BelongsTo::model,
       {20, 8, 40, kTunedToPractice}},
      {&C::resistance_ratio_cap,
       "most that a carbide resists, of its matrix",
       "",
       BelongsTo::model,
       {12, 6, 20, kTunedToPractice}},
      {&C::matrix_hv,
       "hardness of the matrix",
       "HV",
       BelongsTo::steel,
       of_steel(steel.matrix_hv, steel.matrix_hv_range)},
      {&C::carbide_volume_fraction,
       "share of carbide",
       "",
       BelongsTo::steel,
       of_steel(steel.carbide_volume_fraction, steel.carbide_volume_fraction_range)},
      {&C::carbide_hv,
       "hardness of the carbides",
       "HV",
       BelongsTo::steel,
       of_steel(steel.carbide_hv, steel.carbide_hv_range)},
      {&C::carbide_diameter_um,
       "diameter of the carbides",
       "µm",
       BelongsTo::steel,
       of_steel(steel.carbide_diameter_um, steel.carbide_diameter_um_range)},
      {&C::abrasive_hv, "hardness of the grain", "HV", BelongsTo::stone, stone.abrasive_hv},
      {&C::groove_width_um, "width of a groove", "µm", BelongsTo::stone, stone.groove_width_um},
      {&C::cutting_power_ratio,
       "cutting power, of fused alumina",
       "",
       BelongsTo::stone,
       stone.cutting_power_ratio},
      {&C::blunt_share_fraction,
       "rate that a glazed stone keeps",
       "",
       BelongsTo::stone,
       stone.blunt_share_fraction},
  };
}

RemovalConstants typical_constants(const std::vector<UncertainConstant>& constants) {
  RemovalConstants values;
  for (const UncertainConstant& each : constants) values.*each.member = each.estimate.typical;
  return values;
}

RemovalConstants drawn_constants(const std::vector<UncertainConstant>& constants,
                                 numerics::RandomStream& shared,
                                 numerics::RandomStream& of_stone) {
  RemovalConstants values;
  for (const UncertainConstant& each : constants) {
    const bool is_of_stone = each.belongs_to == BelongsTo::stone;
    const double fraction = is_of_stone ? of_stone.uniform() : shared.uniform();
    values.*each.member = numerics::along_range(each.estimate.lo, each.estimate.hi, fraction);
  }
  return values;
}

}  // namespace keenfall::sharpening
