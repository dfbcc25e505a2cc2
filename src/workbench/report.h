// What is behind `keenfall tell`: a report of tables, or of a trial of a notebook.
//
// In: what judge_files takes, and the day. Out: the judgements with the trial they rest on, every
// run, and where it came from. A notebook counts it as a look. Fails as judge_files does.
#pragma once

#include "telling/report.h"
#include "workbench/judge_files.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::workbench {

struct ReportOfFiles {
  telling::Report report;
  std::string kept_words;  // how the notebook counted it, in sentences; empty for tables
};

// The name that a report's table is saved under.
inline constexpr const char* kSavedTable = "readings.csv";

struct JudgedTold {
  trials::Trial trial;
  std::vector<verdicts::Judgement> judgements;
  std::vector<std::string> from;              // names of files, or in words
  std::vector<std::string> not_in_its_table;  // TrialTable::left_out of the trial
};

// A report of what was judged already by these options.
[[nodiscard]] telling::Report report_of(JudgedTold judged,
                                        const JudgeOptions& options,
                                        const JudgedBy& by);

// by.hand.at_utc says the day.
[[nodiscard]] base::ResultOrProblems<ReportOfFiles> report_of_files(
    std::span<const std::string> paths,
    const JudgeOptions& options,
    const JudgedBy& by,
    const base::Executor& executor,
    const base::ProgressReport& progress);

}  // namespace keenfall::workbench
