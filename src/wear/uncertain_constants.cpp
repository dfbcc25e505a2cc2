#include "wear/uncertain_constants.h"

#include <algorithm>
#include <array>

namespace keenfall::wear {

namespace {

using materials::Microstructure;
using materials::Provenance;
using materials::TrustMark;

constexpr Provenance kGuess{"plausible", TrustMark::guessed};
constexpr Provenance kTuned{"practice", TrustMark::tuned};

// A range as multiples of the usual figure, or as two figures.
enum class Range { multiples, figures };

struct Row {
  const char* name = "";
  const char* unit = "";
  Range range = Range::multiples;
  double lo = 0;
  double hi = 0;
  Provenance from;
  double& (*in)(ApexScenario&) = nullptr;
};

using enum Range;

// clang-format off
constexpr std::array kMediumRows{
    Row{"hardness of the abrasive", "HV", multiples, 0.8, 1.2, kGuess, [](ApexScenario& s) -> double& { return s.medium.abrasive_hv; }},
    Row{"width of grooves", "µm", multiples, 0.4, 2.5, kGuess, [](ApexScenario& s) -> double& { return s.medium.groove_width_um; }},
    Row{"wear rate at resistance 1", "mm³/(N m)", multiples, 1.0 / 3, 3, kTuned, [](ApexScenario& s) -> double& { return s.medium.reference_wear_rate_mm3_per_newton_metre; }},
    Row{"cap of carbide over matrix resistance", "", figures, 6, 20, kTuned, [](ApexScenario& s) -> double& { return s.medium.resistance_ratio_cap; }},
    Row{"growth of the load with the land, exponent", "", figures, 0, 1, kGuess, [](ApexScenario& s) -> double& { return s.medium.acts.wear.load_growth_exponent; }},
    Row{"compliance of the medium", "µm", figures, 6, 40, kGuess, [](ApexScenario& s) -> double& { return s.medium.acts.wear.load_share_compliance_um; }},
    Row{"hits per mm and cut", "1/mm", multiples, 1.0 / 3, 3, kTuned, [](ApexScenario& s) -> double& { return s.medium.acts.particles.hits_per_mm_cut; }},
    Row{"median diameter of particles", "µm", figures, 30, 100, kTuned, [](ApexScenario& s) -> double& { return s.medium.acts.particles.median_diameter_um; }},
    Row{"spread of the diameters", "", figures, 1.5, 2.2, kTuned, [](ApexScenario& s) -> double& { return s.medium.acts.particles.diameter_spread_ratio; }},
    Row{"pushback pressure", "MPa", figures, 10, 40, kTuned, [](ApexScenario& s) -> double& { return s.medium.acts.particles.pushback_pressure_mpa; }},
    Row{"scatter of the hits' angle", "°", figures, 15, 35, kTuned, [](ApexScenario& s) -> double& { return s.medium.acts.particles.angle_rms_deg; }},
    Row{"mean sideways load", "N/mm", multiples, 1.0 / 3, 5, kTuned, [](ApexScenario& s) -> double& { return s.medium.acts.twist.mean_line_load_newton_per_mm; }}};
constexpr std::array kOtherRows{
    Row{"start width of the land", "µm", multiples, 0.6, 2, kGuess, [](ApexScenario& s) -> double& { return s.edge.finish.land_width_um; }},
    Row{"flaw constant", "", figures, 0.03, 0.4, kTuned, [](ApexScenario& s) -> double& { return s.flaw_constant; }},
    Row{"land gain of chips", "", figures, 0.6, 1, kTuned, [](ApexScenario& s) -> double& { return s.damage.chip_land_gain; }},
    Row{"aspect of chips", "", figures, 2, 6, kTuned, [](ApexScenario& s) -> double& { return s.damage.chip_aspect; }},
    Row{"life of a fold", "cuts", figures, 10, 1000, kGuess, [](ApexScenario& s) -> double& { return s.damage.fold_life_cuts; }},
    Row{"share of a fold that is felt", "", figures, 0.3, 0.7, kTuned, [](ApexScenario& s) -> double& { return s.reading.fold_share; }},
    Row{"reach of a push reading", "µm", figures, 10, 100, kTuned, [](ApexScenario& s) -> double& { return s.reading.push_reach_um; }},
    Row{"gain of slopes in a slice", "", figures, 0, 3, kGuess, [](ApexScenario& s) -> double& { return s.reading.slope_gain; }},
    Row{"reach of a slice reading", "µm", figures, 6, 40, kGuess, [](ApexScenario& s) -> double& { return s.reading.slice_reach_um; }}};
// clang-format on

UncertainConstant constant_of(const Row& row, const ApexScenario& scenario) {
  ApexScenario copy = scenario;
  const double usual = row.in(copy);
  const double times = row.range == Range::multiples ? usual : 1;
  return {.name = row.name,
          .unit = row.unit,
          .usual = usual,
          .lo = std::min(usual, row.lo * times),
          .hi = std::max(usual, row.hi * times),
          .from = row.from,
          .in = row.in};
}

// Of a medium that somebody wrote down: what they say, and no range of ours around it.
UncertainConstant declared_constant_of(const Row& row, const ApexScenario& scenario) {
  UncertainConstant constant = constant_of(row, scenario);
  constant.lo = constant.usual;
  constant.hi = constant.usual;
  constant.from = {"own-file", TrustMark::declared};
  return constant;
}

struct SteelRow {
  const char* name = "";
  const char* unit = "";
  double Microstructure::*usual = nullptr;
  materials::PlausibleRange Microstructure::*range = nullptr;
};

constexpr std::array kSteelRows{SteelRow{"hardness of the matrix",
                                         "HV",
                                         &Microstructure::matrix_hv,
                                         &Microstructure::matrix_hv_range},
                                SteelRow{"share of carbide",
                                         "",
                                         &Microstructure::carbide_volume_fraction,
                                         &Microstructure::carbide_volume_fraction_range},
                                SteelRow{"hardness of the carbides",
                                         "HV",
                                         &Microstructure::carbide_hv,
                                         &Microstructure::carbide_hv_range},
                                SteelRow{"diameter of the carbides",
                                         "µm",
                                         &Microstructure::carbide_diameter_um,
                                         &Microstructure::carbide_diameter_um_range},
                                SteelRow{"toughness",
                                         "MPa √m",
                                         &Microstructure::toughness_mpa_sqrt_m,
                                         &Microstructure::toughness_mpa_sqrt_m_range}};

UncertainConstant constant_of(const SteelRow& row, std::size_t steel, const Microstructure& of) {
  const double usual = of.*row.usual;
  const materials::PlausibleRange& range = of.*row.range;
  return {.name = std::string(row.name) + " of " + of.name,
          .unit = row.unit,
          .usual = usual,
          .lo = std::min(usual, range.lo),
          .hi = std::max(usual, range.hi),
          .from = range.from,
          .in = [steel, member = row.usual](ApexScenario& scenario) -> double& {
            return scenario.steels[steel].*member;
          }};
}

}  // namespace

std::vector<UncertainConstant> uncertain_constants(const ApexScenario& scenario) {
  std::vector<UncertainConstant> constants;
  const bool medium_is_known = std::ranges::count(known_media(), scenario.medium) > 0;
  for (const Row& row : kMediumRows) {
    constants.push_back(medium_is_known ? constant_of(row, scenario)
                                        : declared_constant_of(row, scenario));
  }
  for (const Row& row : kOtherRows) constants.push_back(constant_of(row, scenario));
  for (std::size_t steel = 0; steel < scenario.steels.size(); ++steel) {
    for (const SteelRow& row : kSteelRows) {
      constants.push_back(constant_of(row, steel, scenario.steels[steel]));
    }
  }
  return constants;
}

base::Result<ApexScenario> with_constant(const ApexScenario& scenario,
                                         std::string_view name,
                                         double usual) {
  const auto constants = uncertain_constants(scenario);
  const auto found = std::ranges::find(constants, name, &UncertainConstant::name);
  if (found == constants.end()) {
    std::string accepted;
    for (const UncertainConstant& constant : constants) {
      accepted += (accepted.empty() ? "" : "; ") + constant.name;
    }
    return base::failed({.kind = base::ProblemKind::unknown_name,
                         .sentence = "the simulator has no constant of this name",
                         .place = {.found = std::string(name)},
                         .accepted = accepted});
  }
  ApexScenario changed = scenario;
  found->in(changed) = usual;
  return changed;
}

}  // namespace keenfall::wear
