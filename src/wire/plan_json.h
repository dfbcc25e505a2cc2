// What is asked and planned as JSON (docs/wire/api.json: Claim, Plan, PlannedArm). Private to this
// folder (it shows the library).
#pragma once

#include "trials/plan.h"
#include "wire/json_pieces.h"

#include <vector>

namespace keenfall::wire {

[[nodiscard]] Json claims_json(const std::vector<trials::Claim>& claims);

// In the order of the plan. Of each its words: the blade, and its edge where edges differ.
[[nodiscard]] Json planned_arms_json(const std::vector<trials::PlannedArm>& arms,
                                     const materials::ToldIn& told = {});

[[nodiscard]] Json plan_json(const trials::Plan& plan, const materials::ToldIn& told = {});

}  // namespace keenfall::wire
