// What a plan of a simulated trial must not ask for.
#pragma once

#include "base/result.h"
#include "wear/simulated_trial.h"

#include <optional>

namespace keenfall::wear {

// The first that is out of its range, in words; what a single edge must not be asked for is
// refusals.h.
[[nodiscard]] std::optional<base::Problem> refusal_of(const TrialPlan& plan);

}  // namespace keenfall::wear
