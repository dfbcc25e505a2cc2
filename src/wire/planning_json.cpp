#include "wire/planning_json.h"

#include "wire/plan_json.h"

namespace keenfall::wire {

std::string planned_arms_to_json(const std::vector<trials::PlannedArm>& arms) {
  return in_one_line({{"arms", planned_arms_json(arms)}});
}

std::string checkpoints_to_json(const planning::SuggestedCheckpoints& suggested) {
  return in_one_line({{"checkpoint_cuts", suggested.cuts}, {"sentence", suggested.why}});
}

std::string plan_to_json(const trials::Plan& plan) { return in_one_line(plan_json(plan)); }

}  // namespace keenfall::wire
