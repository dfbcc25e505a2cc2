#include "wear/constant_rows.h"

#include "materials/abrasion_resistance.h"

#include <algorithm>
#include <array>
#include <string>

namespace keenfall::wear {

namespace {

using materials::Estimate;
using materials::kResistanceRatioCap;
using materials::Provenance;
using materials::TrustMark;
using materials::UncertainConstant;

constexpr Provenance kGuess{"plausible", TrustMark::guessed};
constexpr Provenance kTuned{"practice", TrustMark::tuned};
constexpr Provenance kOwnFile{"own-file", TrustMark::declared};

constexpr ConstantRange kHeld;
constexpr ConstantRange times(double lo, double hi) {
  return {ConstantRange::Kind::multiples_of_usual, lo, hi};
}
constexpr ConstantRange between(double lo, double hi) {
  return {ConstantRange::Kind::figures, lo, hi};
}

using Medium = ConstantOf<AbrasiveMedium>;
using Finish = ConstantOf<EdgeFinish>;
using Model = ConstantOf<ApexScenario>;

// clang-format off
constexpr std::array kMediumConstants{
    Medium{"hardness of the abrasive", "abrasive_hv", "HV", times(0.8, 1.2), kGuess, [](AbrasiveMedium& m) -> double& { return m.abrasive_hv; }},
    Medium{"width of grooves", "groove_width_um", "µm", times(0.4, 2.5), kGuess, [](AbrasiveMedium& m) -> double& { return m.groove_width_um; }},
    Medium{"wear rate at resistance 1", "reference_wear_rate_mm3_per_newton_metre", "mm³/(N m)", times(1.0 / 3, 3), kTuned, [](AbrasiveMedium& m) -> double& { return m.reference_wear_rate_mm3_per_newton_metre; }},
    Medium{"cap of carbide over matrix resistance", "resistance_ratio_cap", "", between(kResistanceRatioCap.lo, kResistanceRatioCap.hi), kResistanceRatioCap.from, [](AbrasiveMedium& m) -> double& { return m.resistance_ratio_cap; }},
    Medium{"line load", "line_load_newton_per_mm", "N/mm", kHeld, kGuess, [](AbrasiveMedium& m) -> double& { return m.acts.wear.line_load_newton_per_mm; }},
    Medium{"sliding of a cut", "sliding_m_per_cut", "m", kHeld, kGuess, [](AbrasiveMedium& m) -> double& { return m.acts.wear.sliding_m_per_cut; }},
    Medium{"growth of the load with the land, exponent", "load_growth_exponent", "", between(0, 1), kGuess, [](AbrasiveMedium& m) -> double& { return m.acts.wear.load_growth_exponent; }},
    Medium{"compliance of the medium", "load_share_compliance_um", "µm", between(6, 40), kGuess, [](AbrasiveMedium& m) -> double& { return m.acts.wear.load_share_compliance_um; }},
    Medium{"hits per mm and cut", "hits_per_mm_cut", "1/mm", times(1.0 / 3, 3), kTuned, [](AbrasiveMedium& m) -> double& { return m.acts.particles.hits_per_mm_cut; }},
    Medium{"median diameter of particles", "median_diameter_um", "µm", between(30, 100), kTuned, [](AbrasiveMedium& m) -> double& { return m.acts.particles.median_diameter_um; }},
    Medium{"spread of the diameters", "diameter_spread_ratio", "", between(1.5, 2.2), kTuned, [](AbrasiveMedium& m) -> double& { return m.acts.particles.diameter_spread_ratio; }},
    Medium{"pushback pressure", "pushback_pressure_mpa", "MPa", between(10, 40), kTuned, [](AbrasiveMedium& m) -> double& { return m.acts.particles.pushback_pressure_mpa; }},
    Medium{"scatter of the hits' angle", "angle_rms_deg", "°", between(15, 35), kTuned, [](AbrasiveMedium& m) -> double& { return m.acts.particles.angle_rms_deg; }},
    Medium{"mean sideways load", "twist_mean_line_load_newton_per_mm", "N/mm", times(1.0 / 3, 5), kTuned, [](AbrasiveMedium& m) -> double& { return m.acts.twist.mean_line_load_newton_per_mm; }},
    Medium{"length of a twisted patch", "twist_patch_length_mm", "mm", kHeld, kGuess, [](AbrasiveMedium& m) -> double& { return m.acts.twist.patch_length_mm; }}};
constexpr std::array kFinishConstants{
    Finish{"start width of the land", "land_width_um", "µm", times(0.6, 2), kGuess, [](EdgeFinish& f) -> double& { return f.land_width_um; }},
    Finish{"depth of the teeth", "tooth_depth_um", "µm", kHeld, kGuess, [](EdgeFinish& f) -> double& { return f.tooth_depth_um; }},
    Finish{"spacing of the teeth", "tooth_spacing_um", "µm", kHeld, kGuess, [](EdgeFinish& f) -> double& { return f.tooth_spacing_um; }}};
constexpr std::array kModelConstants{
    Model{"flaw constant", "flaw_constant", "", between(0.03, 0.4), kTuned, [](ApexScenario& s) -> double& { return s.flaw_constant; }},
    Model{"land gain of chips", "chip_land_gain", "", between(0.6, 1), kTuned, [](ApexScenario& s) -> double& { return s.damage.chip_land_gain; }},
    Model{"aspect of chips", "chip_aspect", "", between(2, 6), kTuned, [](ApexScenario& s) -> double& { return s.damage.chip_aspect; }},
    Model{"life of a fold", "fold_life_cuts", "cuts", between(10, 1000), kGuess, [](ApexScenario& s) -> double& { return s.damage.fold_life_cuts; }},
    Model{"share of a fold that is felt", "fold_share", "", between(0.3, 0.7), kTuned, [](ApexScenario& s) -> double& { return s.reading.fold_share; }},
    Model{"reach of a push reading", "push_reach_um", "µm", between(10, 100), kTuned, [](ApexScenario& s) -> double& { return s.reading.push_reach_um; }},
    Model{"gain of slopes in a slice", "slope_gain", "", between(0, 3), kGuess, [](ApexScenario& s) -> double& { return s.reading.slope_gain; }},
    Model{"reach of a slice reading", "slice_reach_um", "µm", between(6, 40), kGuess, [](ApexScenario& s) -> double& { return s.reading.slice_reach_um; }}};
// clang-format on

Estimate estimate_in(const ConstantRange& range, double usual, const Provenance& from) {
  switch (range.kind) {
    case ConstantRange::Kind::held:
      return {usual, usual, usual, from};
    case ConstantRange::Kind::multiples_of_usual:
      return {usual, std::min(usual, range.lo * usual), std::max(usual, range.hi * usual), from};
    case ConstantRange::Kind::figures:
      return {usual, std::min(usual, range.lo), std::max(usual, range.hi), from};
  }
  return {};
}

template <class Thing>
UncertainConstant constant_in(const ConstantOf<Thing>& row, const Thing& thing, bool is_ours) {
  const double usual = row.number_in(thing);
  return {.name = std::string(row.name),
          .field = std::string(row.field),
          .unit = std::string(row.unit),
          .estimate = is_ours ? estimate_in(row.range, usual, row.from)
                              : estimate_in(kHeld, usual, kOwnFile)};
}

}  // namespace

std::span<const Medium> medium_constants() { return kMediumConstants; }
std::span<const Finish> finish_constants() { return kFinishConstants; }
std::span<const Model> model_constants() { return kModelConstants; }

bool is_known(const AbrasiveMedium& medium) {
  return std::ranges::count(known_media(), medium) > 0;
}

bool is_known(const EdgeFinish& finish) {
  return finish == fine_finish() || finish == coarse_finish();
}

UncertainConstant constant_of(const Medium& row, const AbrasiveMedium& medium) {
  return constant_in(row, medium, is_known(medium));
}

UncertainConstant constant_of(const Finish& row, const EdgeFinish& finish) {
  return constant_in(row, finish, is_known(finish));
}

UncertainConstant constant_of(const Model& row, const ApexScenario& scenario) {
  return constant_in(row, scenario, true);
}

}  // namespace keenfall::wear
