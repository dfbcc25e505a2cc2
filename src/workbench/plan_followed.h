// A trial as it was done beside its sealed plan: what was done otherwise, and how it is judged.
//
// Out: whole sentences, few: of many runs that depart alike the first is named. What the runs do
// not say (an angle, the order) cannot depart from the plan. A draft binds nobody.
#pragma once

#include "base/result.h"
#include "materials/told_in.h"
#include "notebook/plans.h"
#include "trials/trial.h"
#include "workbench/judge_tables.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::workbench {

// Arms that were not planned or not cut, runs too few or too many, other checkpoints, checkpoints
// left out (a run may end early), fewer readings at a checkpoint than planned, another order,
// another kind of reading, a plan that was sealed after runs were read. Empty: none.
[[nodiscard]] std::vector<std::string> deviations_from(const notebook::KeptPlan& plan,
                                                       const trials::Trial& done,
                                                       const materials::ToldIn& told = {});

// The planned looks, if a judging can allow for them (verdicts/planned_looks.h); else none.
[[nodiscard]] std::vector<int> looks_to_judge_by(const trials::Plan& plan);

// What is asked, and where that leaves it open the first claim's margin and the planned looks. The
// plan's stop is where runs end, not where edges are compared, so it is not among them.
[[nodiscard]] JudgeOptions as_planned(JudgeOptions asked, const notebook::KeptPlan& plan);

// What was claimed and when that was sealed, then every departure, also those of the question that
// was asked. Of a draft only that it is one.
[[nodiscard]] std::vector<std::string> planned_and_done(const notebook::KeptPlan& plan,
                                                        const trials::Trial& done,
                                                        const JudgeOptions& judged_by);

// The text that a sealed plan is known by (notebook/plan_text.h), line by line.
[[nodiscard]] std::vector<std::string> facts_of(const notebook::KeptPlan& plan);

// Why nothing can be judged or handed out of a trial that was only planned; nothing where it has
// runs.
[[nodiscard]] std::optional<base::Problem> problem_of_uncut(const trials::Trial& trial,
                                                            const std::string& notebook);

}  // namespace keenfall::workbench
