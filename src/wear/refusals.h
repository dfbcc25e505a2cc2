// What a simulation must not be asked for.
#pragma once

#include "base/result.h"
#include "wear/simulated_edge.h"

#include <vector>

namespace keenfall::wear {

// All that is out of its range, by the names of its fields; some are looked at only where others
// hold.
[[nodiscard]] std::vector<base::Problem> problems_of(const ApexSimulation& simulation,
                                                     const Ensemble& ensemble);

}  // namespace keenfall::wear
