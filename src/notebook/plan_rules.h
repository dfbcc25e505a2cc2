// What a claim and a plan must be to be kept at all. Private to the folder.
//
// A draft may lack things; what it says must be possible. Whether a plan is a good one is not
// looked at here.
#pragma once

#include "base/result.h"
#include "notebook/plans.h"

#include <optional>

namespace keenfall::notebook {

// The first thing that is wrong; nothing where it can be kept.
[[nodiscard]] std::optional<base::Problem> problem_of(const Asked& asked);

// What it lacks to be sealed.
[[nodiscard]] std::optional<base::Problem> problem_of_sealing(const KeptPlan& plan,
                                                              const std::string& trial);

}  // namespace keenfall::notebook
