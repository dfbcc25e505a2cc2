// What a simulation must not be asked for.
#pragma once

#include "base/result.h"
#include "wear/simulated_edge.h"

#include <optional>

namespace keenfall::wear {

// The first that is out of its range, by the name of its field.
[[nodiscard]] std::optional<base::Problem> refusal_of(const ApexSimulation& simulation,
                                                      const Ensemble& ensemble);

}  // namespace keenfall::wear
