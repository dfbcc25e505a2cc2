// A judged trial with all it rests on, as a report tells it: the judgements, every run with its
// readings, and where they came from. Values only: workbench/report.h gathers them, wire writes
// them as JSON.
#pragma once

#include "trials/trial.h"
#include "verdicts/judgement.h"
#include "verdicts/reported_run.h"

#include <string>
#include <vector>

namespace keenfall::telling {

struct ReportedJudgement {
  verdicts::Judgement judgement;
  std::vector<verdicts::ReportedRun> runs;  // as judgement.runs

  bool operator==(const ReportedJudgement&) const = default;
};

struct Report {
  std::string title;              // what the trial is called
  std::string written_on;         // "2026-11-26", by UTC
  std::string program_version;    // "0.1.0"
  std::vector<std::string> from;  // names of the files, without their folders
  trials::Trial trial;
  std::vector<ReportedJudgement> judgements;  // at least one; the one with most readings first

  std::string judged_again_by;  // the command that judges its table again, to the same numbers
  std::vector<std::string> not_in_its_table;  // what that table has no place for
  // What was claimed and sealed, and what was done otherwise than planned; empty: no sealed plan.
  std::vector<std::string> planned = {};

  bool operator==(const Report&) const = default;
};

}  // namespace keenfall::telling
