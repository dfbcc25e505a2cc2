#include "wear/uncertain_constants.h"

#include "materials/steel_constants.h"
#include "wear/constant_rows.h"

#include <algorithm>
#include <string>

namespace keenfall::wear {

std::vector<ScenarioConstant> uncertain_constants(const ApexScenario& scenario) {
  std::vector<ScenarioConstant> all;
  for (const auto& row : medium_constants()) {
    if (row.is_held()) continue;
    all.push_back(
        {.constant = constant_of(row, scenario.medium),
         .in = [in = row.in](ApexScenario& in_it) -> double& { return in(in_it.medium); }});
  }
  for (const auto& row : finish_constants()) {
    if (row.is_held()) continue;
    all.push_back(
        {.constant = constant_of(row, scenario.edge.finish),
         .in = [in = row.in](ApexScenario& in_it) -> double& { return in(in_it.edge.finish); }});
  }
  for (const auto& row : model_constants()) {
    all.push_back({.constant = constant_of(row, scenario), .in = row.in});
  }
  for (std::size_t steel = 0; steel < scenario.steels.size(); ++steel) {
    for (const materials::SteelConstant& row : materials::steel_constants()) {
      all.push_back({.constant = constant_of(row, scenario.steels[steel]),
                     .in = [steel, member = row.usual](ApexScenario& in_it) -> double& {
                       return in_it.steels[steel].*member;
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
  found->in(changed) = usual;
  return changed;
}

}  // namespace keenfall::wear
