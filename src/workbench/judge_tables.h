// The main use case: from tables of readings, or a trial already taken in, to its judgements.
//
// In: paths of tables (all of one trial) and what was asked for. Out: one judgement for each kind
// of reading and thread, the one with most readings first, then one for each pass-or-fail test; at
// least one. Where other edges of one medium were read than were tested, and what failing the test
// means on a curve is stated, one more for each such test holds the comparisons between the two.
// Fails with every problem of the tables or of an option (Place::column is then the
// option, "--kind"), or with one of kind `interrupted` when the progress report asked to stop. The
// numbers depend on the seed, never on the executor.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"
#include "workbench/fitted_trial.h"
#include "workbench/judge_options.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::workbench {

struct JudgedTrial {
  trials::Trial trial;  // as it was taken in
  std::vector<verdicts::Judgement> judgements;
};

[[nodiscard]] base::ResultOrProblems<JudgedTrial> judge_tables(
    std::span<const std::string> paths,
    const JudgeOptions& options,
    const base::Executor& executor,
    const base::ProgressReport& progress);

[[nodiscard]] base::ResultOrProblems<std::vector<verdicts::Judgement>> judge_trial(
    const trials::Trial& given,
    const JudgeOptions& options,
    const base::Executor& executor,
    const base::ProgressReport& progress);

// What judge_trial judges from; `given` outlives it.
[[nodiscard]] base::ResultOrProblems<FittedTrial> fit_to_judge(
    const trials::Trial& given,
    const JudgeOptions& options,
    const base::Executor& executor,
    const base::ProgressReport& progress);

// From fits at hand: of the options those count that fit_trial did not use. No judgement is made
// twice from the same chance: the same fits and options give the same judgements.
[[nodiscard]] base::ResultOrProblems<std::vector<verdicts::Judgement>> judge_fitted(
    const FittedTrial& fitted, const JudgeOptions& options);

// The same, telling its progress before each kind of reading and each test; fails with a problem of
// kind `interrupted` where that asks to stop.
[[nodiscard]] base::ResultOrProblems<std::vector<verdicts::Judgement>> judge_fitted(
    const FittedTrial& fitted, const JudgeOptions& options, const base::ProgressReport& progress);

}  // namespace keenfall::workbench
