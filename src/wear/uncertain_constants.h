// Every constant of a scenario that is not well known: its name, unit, plausible range, and where
// its usual figure comes from. A constant is reached by its name.
//
// Ranges are ours, wide on purpose; those of a steel are its microstructure's. Constants that can
// only be seen as a product (wear rate, load, sliding) stand as one.
#pragma once

#include "materials/trust.h"
#include "wear/apex_scenario.h"

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::wear {

struct UncertainConstant {
  std::string name;  // "toughness of AISI A11", "median diameter of particles"
  std::string unit;  // "MPa √m"; empty: none
  double usual = 0;  // as the scenario has it
  double lo = 0;
  double hi = 0;
  materials::Provenance from;  // of the usual figure; a steel's: of its range
  std::function<double&(ApexScenario&)> in;
};

// Those of the medium, the edge, damage and reading; then each steel's. A medium that is none of
// the known ones counts as declared: its figures have no range.
[[nodiscard]] std::vector<UncertainConstant> uncertain_constants(const ApexScenario& scenario);

// Refused: unknown names (all are listed as accepted).
[[nodiscard]] base::Result<ApexScenario> with_constant(const ApexScenario& scenario,
                                                       std::string_view name,
                                                       double usual);

}  // namespace keenfall::wear
