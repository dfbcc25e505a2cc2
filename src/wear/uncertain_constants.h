// Every constant of a scenario that is not well known, and how it is reached in it: those of
// constant_rows.h that are not held, and each steel's. A constant is reached by its name.
#pragma once

#include "materials/uncertain_constant.h"
#include "wear/apex_scenario.h"

#include <functional>
#include <string_view>
#include <vector>

namespace keenfall::wear {

struct ScenarioConstant {
  materials::UncertainConstant constant;           // "toughness of AISI A11"
  std::function<void(ApexScenario&, double)> set;  // wherever the scenario has it
};

// Those of the medium, the edge, damage and reading; then each steel's.
[[nodiscard]] std::vector<ScenarioConstant> uncertain_constants(const ApexScenario& scenario);

// Refused: unknown names (all are listed as accepted).
[[nodiscard]] base::Result<ApexScenario> with_constant(const ApexScenario& scenario,
                                                       std::string_view name,
                                                       double usual);

}  // namespace keenfall::wear
