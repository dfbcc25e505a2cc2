// What a plan of a simulated trial must not ask for.
#pragma once

#include "base/result.h"
#include "wear/simulated_trial.h"

#include <vector>

namespace keenfall::wear {

// All that is missing, asked for twice or out of its range, in words, also of its edges; each once.
// Empty: it can be simulated.
[[nodiscard]] std::vector<base::Problem> problems_of(const TrialPlan& plan);

}  // namespace keenfall::wear
