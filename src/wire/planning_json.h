// What is answered while a trial is planned, as JSON: arms, checkpoints, the plan. Each out: one
// JSON object in one line. Shapes: docs/wire/api.json.
#pragma once

#include "planning/suggested_checkpoints.h"
#include "trials/plan.h"

#include <string>
#include <vector>

namespace keenfall::wire {

[[nodiscard]] std::string planned_arms_to_json(const std::vector<trials::PlannedArm>& arms);
[[nodiscard]] std::string checkpoints_to_json(const planning::SuggestedCheckpoints& suggested);
[[nodiscard]] std::string plan_to_json(const trials::Plan& plan);

}  // namespace keenfall::wire
