// What a plan in hand costs and what it can find out, in numbers and sentences.
//
// Asked about is, in each cutting, the first arm against the last. A plan with one arm compares
// nothing, and has no cutting in the answer. Fails where a trial would be too large to be imagined,
// and when asked to stop.
// Method page: docs/methods/planning.md
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "planning/chances.h"
#include "wire/planning_json.h"
#include "workbench/plan_in_hand.h"

namespace keenfall::workbench {

[[nodiscard]] wire::CostTold cost_told(const PlanInHand& in_hand);

// In closed form, at once.
[[nodiscard]] base::Result<wire::ChancesTold> rough_chances_told(const PlanInHand& in_hand);

// How many trials are imagined: for each chance, and for each number of runs that is tried. A
// number of runs is with so many right, or off by one (docs/methods/planning.md).
struct TrialsImagined {
  int for_chances = planning::kUsualTrials;
  int for_runs_needed = 200;
};

// By cutting it in imagination, some seconds for each cutting; the seed is that of its order.
[[nodiscard]] base::Result<wire::ChancesTold> chances_told(const PlanInHand& in_hand,
                                                           const TrialsImagined& trials,
                                                           const base::Executor& execute,
                                                           const base::ProgressReport& report);

}  // namespace keenfall::workbench
