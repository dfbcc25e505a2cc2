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

telling::Report report_of(trials::Trial trial,
                          std::vector<verdicts::Judgement> judgements,
                          std::vector<std::string> from,
                          const JudgeOptions& options,
                          const JudgedBy& by) {
  telling::Report report{.title = trial.name,
                         .written_on = day_of(by.hand.at_utc),
                         .program_version = by.program_version,
                         .from = std::move(from),
                         .judged_again_by = judged_again_by(trial, options, kSavedTable),
                         .not_in_its_table = trial_table(trial).left_out};
  for (verdicts::Judgement& judgement : judgements) {
    auto runs = verdicts::reported_runs(trial, judgement);
    report.judgements.push_back({.judgement = std::move(judgement), .runs = std::move(runs)});
  }
  report.trial = std::move(trial);
  return report;
}

base::ResultOrProblems<ReportOfFiles> report_of_files(std::span<const std::string> paths,
                                                      const JudgeOptions& options,
                                                      const JudgedBy& by,
                                                      const base::Executor& executor,
                                                      const base::ProgressReport& progress) {
  auto judged = judge_files(paths, options, by, executor, progress);
  if (!judged) return tl::unexpected<std::vector<base::Problem>>(std::move(judged.error()));
  ReportOfFiles made{.report = report_of(std::move(judged->trial),
                                         std::move(judged->judgements),
                                         file_names(paths),
                                         judged->options,
                                         by),
                     .kept_words = std::move(judged->kept_words)};
  made.report.planned = std::move(judged->plan_words);
  return made;
}

}  // namespace keenfall::workbench
