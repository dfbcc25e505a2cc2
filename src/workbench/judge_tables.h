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
#include "base/seed.h"
#include "exchange/table_options.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::workbench {

struct JudgeOptions {
  double worth_it_margin = 1.5;               // above 1
  std::optional<double> stop_level;           // times the start reading, above 1
  std::optional<std::string> stop_reading;    // as typed, with its unit: "400gf"; not both
  std::string model = "default";              // or "plain"
  std::optional<verdicts::ClaimAbout> claim;  // absent: of the steels wherever that can be made
  std::vector<int> looks;  // runs of every arm at each planned look, rising; empty: one look
  // What failing the test means on a curve, times the start reading, above 1; for lives that state
  // none themselves, and for a pass ladder.
  std::optional<double> test_level;
  base::Seed seed{1};
  std::optional<std::string> kind;   // only readings of this kind
  std::optional<int> rung;           // of the pass ladder, 1 to 9; absent: the one that tells most
  std::optional<std::string> trial;  // of a notebook; absent: its only one
  exchange::TableOptions table;
};

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

}  // namespace keenfall::workbench
