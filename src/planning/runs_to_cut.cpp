#include "planning/runs_to_cut.h"

#include <algorithm>

namespace keenfall::planning {

namespace {

bool is_of_blade_and_medium(const trials::Run& run,
                            const trials::PlannedArm& arm,
                            const trials::Plan& plan) {
  return run.arm.blade == arm.blade && run.arm.medium == plan.cuttings.at(arm.cutting).medium;
}

// Where the edge was not recorded, the blade's only arm in that medium is meant.
bool may_be_of_edge(const trials::Run& run,
                    const trials::PlannedArm& arm,
                    const trials::Plan& plan) {
  if (run.arm.edge == arm.edge) return true;
  const auto alike = std::ranges::count_if(plan.arms, [&](const trials::PlannedArm& other) {
    return is_of_blade_and_medium(run, other, plan);
  });
  return run.arm.edge == trials::EdgePreparation() && alike == 1;
}

bool was_read(const trials::Run& run) {
  return !run.voided_reason && (!run.readings.empty() || !run.edge_lives.empty());
}

}  // namespace

bool is_of_arm(const trials::Run& run, const trials::PlannedArm& arm, const trials::Plan& plan) {
  const trials::PlannedCutting& cutting = plan.cuttings.at(arm.cutting);
  return run.arm.blade == arm.blade && run.arm.edge == arm.edge &&
         run.arm.medium == cutting.medium && run.arm.method == cutting.method;
}

bool is_in_trial(const trials::PlannedRun& planned,
                 const trials::Plan& plan,
                 const trials::Trial& trial) {
  const trials::PlannedArm& arm = plan.arms.at(planned.arm);
  return std::ranges::any_of(trial.runs, [&](const trials::Run& run) {
    if (!was_read(run) || !is_of_blade_and_medium(run, arm, plan)) return false;
    if (run.order) return *run.order == planned.order;
    const bool is_that_piece = run.specimen.empty() || run.specimen == planned.specimen;
    return run.name == std::to_string(planned.block) && is_that_piece &&
           may_be_of_edge(run, arm, plan);
  });
}

std::string free_run_name(const std::string& wanted,
                          const std::function<bool(const std::string&)>& is_taken) {
  std::string name = wanted;
  for (int again = 2; is_taken(name); ++again) name = wanted + " again " + std::to_string(again);
  return name;
}

std::vector<RunToCut> runs_to_cut(const trials::Plan& plan, const trials::Trial& trial) {
  std::vector<RunToCut> left;
  for (std::size_t i = 0; i < plan.runs.size(); ++i) {
    const trials::PlannedRun& planned = plan.runs[i];
    if (is_in_trial(planned, plan, trial)) continue;
    const auto is_taken = [&](const std::string& name) {
      return std::ranges::any_of(trial.runs, [&](const trials::Run& run) {
        return run.name == name && is_of_arm(run, plan.arms.at(planned.arm), plan);
      });
    };
    left.push_back({.planned = i, .name = free_run_name(std::to_string(planned.block), is_taken)});
  }
  return left;
}

}  // namespace keenfall::planning
