#include "sharpening/removal_estimates.h"

#include "materials/abrasion_resistance.h"
#include "materials/steel_constants.h"
#include "numerics/along_range.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <string_view>

namespace keenfall::sharpening {

namespace {

using enum materials::TrustMark;
using C = RemovalConstants;

constexpr materials::Provenance kTunedToPractice = {"practice", tuned};

// Two-body abrasion: 5e-3 to 5e-2 without unit (recalled) over 6.9 GPa is 0.7e-3 to 7e-3.
constexpr Estimate kWear = {2e-3, 0.7e-3, 7e-3, {"two-body-memory", tuned}};

std::vector<RemovalEstimate> of_model() {
  using enum BelongsTo;
  return {
      {&C::wear_mm3_per_newton_m,
       model,
       {"steel worn off by force and path", "wear_mm3_per_newton_m", "mm³/(N m)", kWear}},
      {&C::glazing_passes,
       model,
       {"passes in which a stone glazes", "glazing_passes", "", {120, 60, 240, kTunedToPractice}}},
      {&C::glazing_by_hard_carbides,
       model,
       {"how hard carbides speed that up",
        "glazing_by_hard_carbides",
        "",
        {20, 8, 40, kTunedToPractice}}},
      {&C::resistance_ratio_cap,
       model,
       {"most that a carbide resists, of its matrix",
        "resistance_ratio_cap",
        "",
        materials::kResistanceRatioCap}}};
}

// Toughness is not among them.
std::vector<RemovalEstimate> of_steel(const materials::Microstructure& steel) {
  struct Place {
    std::string_view field;
    double C::*member;
  };
  constexpr std::array kPlaces{Place{"matrix_hv", &C::matrix_hv},
                               Place{"carbide_volume_fraction", &C::carbide_volume_fraction},
                               Place{"carbide_hv", &C::carbide_hv},
                               Place{"carbide_diameter_um", &C::carbide_diameter_um}};
  std::vector<RemovalEstimate> estimates;
  for (const materials::SteelConstant& row : materials::steel_constants()) {
    const auto place = std::ranges::find(kPlaces, row.field, &Place::field);
    if (place == kPlaces.end()) continue;
    estimates.push_back({place->member, BelongsTo::steel, constant_of(row, steel)});
  }
  return estimates;
}

std::vector<RemovalEstimate> of_stone(const Stone& each) {
  using enum BelongsTo;
  return {
      {&C::abrasive_hv, stone, {"hardness of the grain", "abrasive_hv", "HV", each.abrasive_hv}},
      {&C::groove_width_um,
       stone,
       {"width of a groove", "groove_width_um", "µm", each.groove_width_um}},
      {&C::cutting_power_ratio,
       stone,
       {"cutting power, of fused alumina", "cutting_power_ratio", "", each.cutting_power_ratio}},
      {&C::blunt_share_fraction,
       stone,
       {"rate that a glazed stone keeps", "blunt_share_fraction", "", each.blunt_share_fraction}}};
}

}  // namespace

Estimate model_wear() { return kWear; }

std::vector<RemovalEstimate> removal_estimates(const materials::Microstructure& steel,
                                               const Stone& stone) {
  std::vector<RemovalEstimate> all = of_model();
  std::ranges::move(of_steel(steel), std::back_inserter(all));
  std::ranges::move(of_stone(stone), std::back_inserter(all));
  return all;
}

std::vector<RemovalEstimate> with_count(std::vector<RemovalEstimate> constants,
                                        const CountedStrokes& counted) {
  using enum BelongsTo;
  constants.push_back(
      {&C::counted_mm3,
       stone,
       {"steel that the counted passes took", "counted_mm3", "mm³", counted.removed_mm3}});
  constants.push_back({&C::later_stroke_ratio,
                       stone,
                       {"force times path of another day, of the day counted",
                        "later_stroke_ratio",
                        "",
                        kAnotherDay}});
  // Still drawn, so that all stones share their draws of model and steel, but from one place.
  const double wear = calibrated(typical_constants(constants), counted).wear_mm3_per_newton_m;
  const auto k0 = std::ranges::find(constants, &C::wear_mm3_per_newton_m, &RemovalEstimate::member);
  k0->constant.estimate = {
      .typical = wear, .lo = wear, .hi = wear, .from = counted.removed_mm3.from};
  return constants;
}

RemovalConstants typical_constants(const std::vector<RemovalEstimate>& constants) {
  RemovalConstants values;
  for (const RemovalEstimate& each : constants) {
    values.*each.member = each.constant.estimate.typical;
  }
  return values;
}

RemovalConstants drawn_constants(const std::vector<RemovalEstimate>& constants,
                                 numerics::RandomStream& shared,
                                 numerics::RandomStream& of_stone) {
  RemovalConstants values;
  for (const RemovalEstimate& each : constants) {
    const bool is_of_stone = each.belongs_to == BelongsTo::stone;
    const double fraction = is_of_stone ? of_stone.uniform() : shared.uniform();
    const Estimate& estimate = each.constant.estimate;
    values.*each.member = numerics::along_range(estimate.lo, estimate.hi, fraction);
  }
  return values;
}

}  // namespace keenfall::sharpening
