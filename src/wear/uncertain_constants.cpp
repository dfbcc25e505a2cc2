#include "wear/uncertain_constants.h"

#include "materials/steel_constants.h"
#include "wear/constant_rows.h"

#include <algorithm>
#include <string>
#include <variant>

namespace keenfall::wear {

namespace {

// Each medium of the work once, as it first comes.
std::vector<const AbrasiveMedium*> media_of(const WorkPlan& work) {
  std::vector<const AbrasiveMedium*> media;
  for (const WorkStep& step : work.steps) {
    const auto* medium = std::get_if<AbrasiveMedium>(&step.what);
    const auto has_its_name = [&](const AbrasiveMedium* each) {
      return each->name == medium->name;
    };
    if (medium != nullptr && std::ranges::none_of(media, has_its_name)) media.push_back(medium);
  }
  return media;
}

// One medium's constants in every step that cuts it; in mixed work they bear its name.
void add_medium(const AbrasiveMedium& medium,
                bool is_mixed,
                std::vector<ScenarioConstant>& constants) {
  for (const auto& row : medium_constants()) {
    if (row.is_held()) continue;
    constants.push_back(
        {.constant = constant_of(row, medium),
         .set = [in = row.in, name = medium.name](ApexScenario& scenario, double figure) {
           for (WorkStep& step : scenario.work.steps) {
             auto* cut = std::get_if<AbrasiveMedium>(&step.what);
             if (cut != nullptr && cut->name == name) in(*cut) = figure;
           }
         }});
    if (is_mixed) constants.back().constant.name += " in " + medium.name;
  }
}

// How fast the land grows in wet pauses, where nobody said: one rate for all of them. A rate that
// was said stays.
void add_corrosion(const WorkPlan& work, std::vector<ScenarioConstant>& constants) {
  const auto is_usual = [](const WorkStep& step) {
    const auto* pause = std::get_if<WetPause>(&step.what);
    return pause != nullptr && pause->land_growth_um_per_hour == kWetLandGrowthUmPerHour;
  };
  std::vector<std::size_t> steps;
  for (std::size_t i = 0; i < work.steps.size(); ++i) {
    if (is_usual(work.steps[i])) steps.push_back(i);
  }
  if (steps.empty()) return;
  constants.push_back({.constant = {.name = "growth of the land in a wet pause",
                                    .field = "land_growth_um_per_hour",
                                    .unit = "µm/h",
                                    .estimate = {kWetLandGrowthUmPerHour,
                                                 kLeastWetLandGrowthUmPerHour,
                                                 kMostWetLandGrowthUmPerHour,
                                                 {"plausible", materials::TrustMark::guessed}}},
                       .set = [steps](ApexScenario& scenario, double figure) {
                         for (const std::size_t i : steps) {
                           std::get<WetPause>(scenario.work.steps[i].what).land_growth_um_per_hour =
                               figure;
                         }
                       }});
}

}  // namespace

std::vector<ScenarioConstant> uncertain_constants(const ApexScenario& scenario) {
  std::vector<ScenarioConstant> all;
  const auto media = media_of(scenario.work);
  for (const AbrasiveMedium* medium : media) add_medium(*medium, media.size() > 1, all);
  add_corrosion(scenario.work, all);
  for (const auto& row : finish_constants()) {
    if (row.is_held()) continue;
    all.push_back({.constant = constant_of(row, scenario.edge.finish),
                   .set = [in = row.in](ApexScenario& changed, double figure) {
                     in(changed.edge.finish) = figure;
                   }});
  }
  for (const auto& row : model_constants()) {
    all.push_back(
        {.constant = constant_of(row, scenario),
         .set = [in = row.in](ApexScenario& changed, double figure) { in(changed) = figure; }});
  }
  for (std::size_t steel = 0; steel < scenario.steels.size(); ++steel) {
    for (const materials::SteelConstant& row : materials::steel_constants()) {
      all.push_back({.constant = constant_of(row, scenario.steels[steel]),
                     .set = [steel, member = row.usual](ApexScenario& changed, double figure) {
                       changed.steels[steel].*member = figure;
                     }});
      all.back().constant.name += " of " + scenario.steels[steel].name;
    }
  }
  return all;
}

base::Result<ApexScenario> with_constant(const ApexScenario& scenario,
                                         std::string_view name,
                                         double usual) {
  const auto constants = uncertain_constants(scenario);
  const auto found = std::ranges::find_if(
      constants, [&](const ScenarioConstant& each) { return each.constant.name == name; });
  if (found == constants.end()) {
    std::string accepted;
    for (const ScenarioConstant& each : constants) {
      accepted += (accepted.empty() ? "" : "; ") + each.constant.name;
    }
    return base::failed({.kind = base::ProblemKind::unknown_name,
                         .sentence = "the simulator has no constant of this name",
                         .place = {.found = std::string(name)},
                         .accepted = accepted});
  }
  ApexScenario changed = scenario;
  found->set(changed, usual);
  return changed;
}

}  // namespace keenfall::wear
