#include "workbench/report.h"

#include "workbench/judged_again.h"
#include "workbench/trial_table.h"

#include <filesystem>
#include <utility>
#include <vector>

namespace keenfall::workbench {

namespace {

std::vector<std::string> file_names(std::span<const std::string> paths) {
  std::vector<std::string> names;
  for (const std::string& path : paths) {
    names.push_back(std::filesystem::path(path).filename().string());
  }
  return names;
}

// "2026-11-26T12:00:00Z" is the day 2026-11-26.
std::string day_of(const std::string& at_utc) { return at_utc.substr(0, at_utc.find('T')); }

}  // namespace

telling::Report report_of(JudgedTold judged, const JudgeOptions& options, const JudgedBy& by) {
  telling::Report report{.title = judged.trial.name,
                         .written_on = day_of(by.hand.at_utc),
                         .program_version = by.program_version,
                         .from = std::move(judged.from),
                         .judged_again_by = judged_again_by(judged.trial, options, kSavedTable),
                         .not_in_its_table = std::move(judged.not_in_its_table)};
  for (verdicts::Judgement& judgement : judged.judgements) {
    auto runs = verdicts::reported_runs(judged.trial, judgement);
    report.judgements.push_back({.judgement = std::move(judgement), .runs = std::move(runs)});
  }
  report.trial = std::move(judged.trial);
  return report;
}

base::ResultOrProblems<ReportOfFiles> report_of_files(std::span<const std::string> paths,
                                                      const JudgeOptions& options,
                                                      const JudgedBy& by,
                                                      const base::Executor& executor,
                                                      const base::ProgressReport& progress) {
  auto judged = judge_files(paths, options, by, executor, progress);
  if (!judged) return tl::unexpected<std::vector<base::Problem>>(std::move(judged.error()));
  auto not_in_its_table = trial_table(judged->trial).left_out;
  ReportOfFiles made{.report = report_of({.trial = std::move(judged->trial),
                                          .judgements = std::move(judged->judgements),
                                          .from = file_names(paths),
                                          .not_in_its_table = std::move(not_in_its_table)},
                                         judged->options,
                                         by),
                     .kept_words = std::move(judged->kept_words)};
  made.report.planned = std::move(judged->plan_words);
  return made;
}

}  // namespace keenfall::workbench
