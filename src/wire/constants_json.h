// Constants of the simulator in JSON, with range, source and mark; and the works that edges are
// cut with. Private to this folder. Shapes: docs/wire/constants.schema.json.
#pragma once

#include "materials/uncertain_constant.h"
#include "wear/used_constants.h"
#include "wire/provenance_json.h"

namespace keenfall::wire {

// "lo" and "hi" only where it has a range.
[[nodiscard]] Json constant_json(const materials::UncertainConstant& constant,
                                 SourcesInUse& sources);

[[nodiscard]] Json used_constants_json(const wear::UsedConstants& used, SourcesInUse& sources);

// Its steps in their order: cuts in a medium, or a pause.
[[nodiscard]] Json work_json(const wear::WorkPlan& work);

}  // namespace keenfall::wire
