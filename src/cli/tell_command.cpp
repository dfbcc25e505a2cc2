#include "cli/tell_command.h"

#include "cli/hand.h"
#include "cli/notebook_text.h"
#include "cli/tell_request.h"
#include "cli/text_layout.h"
#include "cli/typed_options.h"
#include "cli/watched_work.h"
#include "page/report_page.h"
#include "wire/report_json.h"
#include "workbench/trial_table.h"
#include "workbench/written_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

namespace keenfall::cli {

namespace {

constexpr const char* kNothingTold = "nothing was told";

// What was made, before it goes where it is wanted.
struct Told {
  std::string content;
  std::string words;       // what it is, in sentences
  std::string kept_words;  // how a notebook counted it
  ExitCode code = ExitCode::answered;
};

std::string report_words(const telling::Report& report) {
  const std::size_t answers = report.judgements.size();
  return fmt::format("the report of {}: {}, {} {} and every reading.",
                     report.title,
                     answers == 1 ? "1 judgement" : fmt::format("{} judgements", answers),
                     report.trial.runs.size(),
                     report.trial.runs.size() == 1 ? "run" : "runs");
}

base::ResultOrProblems<Told> told_report(const TellRequest& request,
                                         const workbench::JudgedBy& by,
                                         const Surroundings& around) {
  auto made =
      watched(request.judging,
              around,
              [&](const base::Executor& executor, const base::ProgressReport& progress) {
                return around.use_cases.report_of_files(
                    request.judging.tables, request.judging.options, by, executor, progress);
              });
  if (!made) return tl::unexpected(std::move(made.error()));
  const auto& judgements = made->report.judgements;
  const bool any_usable = std::ranges::any_of(
      judgements, [](const auto& reported) { return reported.judgement.fit.usable; });
  std::string words = report_words(made->report);
  if (!any_usable) words += " No fit is usable, so it holds no verdict.";
  const bool as_page = request.format == ReportFormat::html;
  return Told{.content = as_page ? page::report_page(made->report,
                                                     workbench::trial_table(made->report.trial).csv)
                                 : wire::report_to_json(made->report),
              .words = std::move(words),
              .kept_words = std::move(made->kept_words),
              .code = any_usable ? ExitCode::answered : ExitCode::not_usable};
}

base::ResultOrProblems<Told> told_table(const TellRequest& request, const Surroundings& around) {
  const auto trial =
      around.use_cases.trial_in_files(request.judging.tables, request.judging.options);
  if (!trial) return tl::unexpected(trial.error());
  workbench::TrialTable table = workbench::trial_table(*trial);
  std::string words = trial_table_words(trial->name);
  if (!table.is_whole) {
    words +=
        " It does not hold all that is recorded of the trial, since a table has no place for it.";
  }
  return Told{.content = std::move(table.csv), .words = std::move(words)};
}

base::ResultOrProblems<Told> told(const TellRequest& request,
                                  const workbench::JudgedBy& by,
                                  const Surroundings& around) {
  switch (request.format) {
    case ReportFormat::html:
    case ReportFormat::json:
      return told_report(request, by, around);
    case ReportFormat::csv:
      break;
  }
  return told_table(request, around);
}

std::string in_lines(const std::string& sentence, const Look& look) {
  return sentence.empty() ? "" : wrapped(shown_as(sentence, look), {}, look);
}

// On standard output it stands alone; what is to be said of it stands beside it.
Outcome delivered_to(const TellRequest& request, Told made, const Look& look) {
  Outcome outcome{.code = made.code};
  const std::string kept = in_lines(made.kept_words, look);
  if (request.out.empty()) {
    outcome.out = std::move(made.content);
    outcome.err = kept;
    return outcome;
  }
  if (const auto problem =
          workbench::write_whole_file(request.out, made.content, workbench::Existing::is_kept)) {
    outcome = refused({*problem}, kNothingTold);
    outcome.err = kept + outcome.err;
    return outcome;
  }
  if (request.judging.quiet) {
    outcome.err = kept;
  } else {
    outcome.out = in_lines(request.out + " is " + made.words, look) + kept;
  }
  return outcome;
}

}  // namespace

Outcome tell_command(std::span<const std::string> words, const Surroundings& surroundings) {
  const auto typed = typed_options(Command::tell, words);
  if (!typed) return wrong_usage(typed.error(), "tell");
  const auto request = tell_request(*typed, surroundings.threads_at_hand);
  if (!request) return wrong_usage(request.error(), "tell");
  if (!request->out.empty()) {
    // Before the work, and before a notebook counts it.
    if (const auto problem = workbench::problem_with_new_file(request->out)) {
      return refused({*problem}, kNothingTold);
    }
  }
  const workbench::JudgedBy by{.hand = hand_of(*typed, surroundings),
                               .program_version = surroundings.program_version};
  auto made = told(*request, by, surroundings);
  if (!made) return refused(made.error(), kNothingTold);
  return delivered_to(*request, std::move(*made), surroundings.look);
}

}  // namespace keenfall::cli
