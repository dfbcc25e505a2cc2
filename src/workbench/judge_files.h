// What is behind `keenfall judge`: tables, or a trial of a notebook, which keeps the answer.
//
// In: paths of tables (all of one trial), or of one notebook. Out: the judgements, to the same
// numbers from either. A notebook is checked as a whole first, and counts the judging as a look,
// with its answer, where it can be written to; else it is judged all the same, and that is said.
// A trial whose plan is sealed is judged by its claim's margin and its planned looks where nothing
// else is asked, and what was done otherwise than planned is said.
// Fails as judge_tables does, and where a notebook is given options that say how a table is read.
// Throws NotebookTrouble where the notebook is not as it was written.
#pragma once

#include "workbench/counted_look.h"
#include "workbench/judge_tables.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::workbench {

struct JudgedFiles {
  trials::Trial trial;  // as it was taken in, or stands in the notebook
  std::vector<verdicts::Judgement> judgements;
  std::string kept_words;     // how the notebook counted it, in sentences; empty for tables
  JudgeOptions options = {};  // as asked, and else as the sealed plan says
  std::vector<std::string> plan_words = {};  // what was claimed and done otherwise than planned
};

[[nodiscard]] base::ResultOrProblems<JudgedFiles> judge_files(std::span<const std::string> paths,
                                                              const JudgeOptions& options,
                                                              const JudgedBy& by,
                                                              const base::Executor& executor,
                                                              const base::ProgressReport& progress);

// The trial that judge_files would judge, read the same way but neither judged nor counted.
[[nodiscard]] base::ResultOrProblems<trials::Trial> trial_in_files(
    std::span<const std::string> paths, const JudgeOptions& options);

}  // namespace keenfall::workbench
