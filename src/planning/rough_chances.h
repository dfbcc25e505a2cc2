// What a plan can find out, at once: the chances of two arms in closed form, for a first answer
// while the plan is still being written (two_sample_chances.h).
//
// Runs scatter as they are assumed to and as they are read (read_scatter.h). Left out: that starts,
// blocks and pieces scatter too, that all arms of a cutting are compared together, and planned
// looks. Out: as chances.h says, with no trials, and so without errors from their number. Fails as
// chances_of does, and where an arm has one run only.
// Method page: docs/methods/planning.md
#pragma once

#include "base/result.h"
#include "planning/assumptions.h"
#include "planning/chances.h"
#include "planning/runs_needed.h"
#include "trials/plan.h"

namespace keenfall::planning {

// asked.trials and asked.seed are not heeded.
[[nodiscard]] base::Result<PlanChances> rough_chances(const trials::Plan& plan,
                                                      const Assumptions& assumptions,
                                                      const ChancesAsked& asked);

// plan.runs_each is not heeded; asked.true_ratios neither.
[[nodiscard]] base::Result<RunsNeeded> rough_runs_needed(const trials::Plan& plan,
                                                         const Assumptions& assumptions,
                                                         const ChancesAsked& asked,
                                                         double true_ratio);

}  // namespace keenfall::planning
