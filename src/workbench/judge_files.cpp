#include "workbench/judge_files.h"

#include "exchange/long_table.h"
#include "workbench/counted_look.h"
#include "workbench/notebook_pages.h"
#include "workbench/plan_followed.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace keenfall::workbench {

namespace {

using base::Problem;
using base::ProblemKind;
using Judged = base::ResultOrProblems<JudgedFiles>;

// What can be asked of tables only.
std::optional<Problem> problem_with_notebook(std::span<const std::string> paths,
                                             const JudgeOptions& options) {
  if (paths.size() > 1) {
    return Problem{.kind = ProblemKind::conflicting,
                   .sentence = "A notebook is judged by itself, and not together with other files.",
                   .place = {.column = "--"},
                   .accepted = "one notebook; keenfall take puts tables into it"};
  }
  const exchange::TableOptions& table = options.table;
  std::string option;
  if (!table.columns.empty()) option = "--column";
  if (!table.defined_kinds.empty()) option = "--define-kind";
  if (!table.where.empty()) option = "--where";
  if (!table.sheets.empty()) option = "--sheet";
  if (table.shape != exchange::TableShape::decide) option = "--shape";
  if (table.decimal_mark != exchange::DecimalMark::decide) option = "--decimal";
  if (option.empty()) return std::nullopt;
  return Problem{
      .kind = ProblemKind::conflicting,
      .sentence = option + " says how a table is read; what is in a notebook was read already.",
      .place = {.column = option},
      .accepted = option + " with keenfall take, when the table is taken in"};
}

base::ResultOrProblems<TrialWithLooks> trial_with_looks(std::span<const std::string> paths,
                                                        const JudgeOptions& options) {
  if (auto problem = problem_with_notebook(paths, options)) {
    return base::failed_by(std::move(*problem));
  }
  auto kept = checked_trial_in(paths.front(), options.trial.value_or(""));
  if (!kept) return base::failed_by(std::move(kept.error()));
  if (auto problem = problem_of_uncut(kept->trial, paths.front())) {
    return base::failed_by(std::move(*problem));
  }
  return std::move(*kept);
}

// Judged and kept, then told: the answer, how it was counted, and what was planned.
std::string kept_and_planned(std::string kept_words, const std::vector<std::string>& plan_words) {
  for (const std::string& sentence : plan_words) kept_words += " " + sentence;
  return kept_words;
}

Judged judge_notebook(std::span<const std::string> paths,
                      const JudgeOptions& asked,
                      const JudgedBy& by,
                      const base::Executor& executor,
                      const base::ProgressReport& progress) {
  auto kept = trial_with_looks(paths, asked);
  if (!kept) return tl::unexpected<std::vector<Problem>>(std::move(kept.error()));
  const JudgeOptions options = kept->plan ? as_planned(asked, *kept->plan) : asked;
  const auto fitted = fit_to_judge(kept->trial, options, executor, progress);
  if (!fitted) return tl::unexpected<std::vector<Problem>>(fitted.error());
  // What is kept is told as it was recorded.
  auto judgements = judge_fitted(*fitted, told_as_recorded(options));
  if (!judgements) return tl::unexpected<std::vector<Problem>>(std::move(judgements.error()));
  CountedLook counted = count_look({.notebook = paths.front(),
                                    .trial = kept->trial,
                                    .looks = kept->looks,
                                    .last_entry = kept->last_entry},
                                   options,
                                   by,
                                   *judgements);
  if (options.told_in != materials::ToldIn{}) judgements = judge_fitted(*fitted, options);
  if (!judgements) return tl::unexpected<std::vector<Problem>>(std::move(judgements.error()));
  if (counted.caution) judgements->front().cannot_say.push_back(std::move(*counted.caution));
  std::vector<std::string> plan_words;
  if (kept->plan) plan_words = planned_and_done(*kept->plan, kept->trial, options);
  return JudgedFiles{.trial = std::move(kept->trial),
                     .judgements = std::move(*judgements),
                     .kept_words = kept_and_planned(std::move(counted.kept_words), plan_words),
                     .options = options,
                     .plan_words = std::move(plan_words)};
}

bool any_notebook(std::span<const std::string> paths) {
  return std::ranges::any_of(paths, is_notebook);
}

std::optional<Problem> problem_with_tables(const JudgeOptions& options) {
  if (!options.trial) return std::nullopt;
  return Problem{.kind = ProblemKind::conflicting,
                 .sentence = "--trial says which trial of a notebook; a table is one trial.",
                 .place = {.column = "--trial", .found = *options.trial},
                 .accepted = "a notebook, or no --trial"};
}

}  // namespace

Judged judge_files(std::span<const std::string> paths,
                   const JudgeOptions& options,
                   const JudgedBy& by,
                   const base::Executor& executor,
                   const base::ProgressReport& progress) {
  if (any_notebook(paths)) return judge_notebook(paths, options, by, executor, progress);
  if (auto problem = problem_with_tables(options)) return base::failed_by(std::move(*problem));
  auto judged = judge_tables(paths, options, executor, progress);
  if (!judged) return tl::unexpected<std::vector<Problem>>(std::move(judged.error()));
  return JudgedFiles{.trial = std::move(judged->trial),
                     .judgements = std::move(judged->judgements),
                     .options = options};
}

base::ResultOrProblems<trials::Trial> trial_in_files(std::span<const std::string> paths,
                                                     const JudgeOptions& options) {
  if (any_notebook(paths)) {
    auto kept = trial_with_looks(paths, options);
    if (!kept) return tl::unexpected<std::vector<Problem>>(std::move(kept.error()));
    return std::move(kept->trial);
  }
  if (auto problem = problem_with_tables(options)) return base::failed_by(std::move(*problem));
  return exchange::take_tables(paths, options.table);
}

}  // namespace keenfall::workbench
