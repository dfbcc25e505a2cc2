#include "cli/demo_command.h"

#include "base/shell_word.h"
#include "cli/hand.h"
#include "cli/judge_command.h"
#include "cli/text_layout.h"
#include "cli/typed_options.h"
#include "cli/watched_work.h"
#include "exchange/long_table_text.h"
#include "page/report_page.h"
#include "workbench/matting_bench.h"
#include "workbench/report.h"
#include "workbench/trial_table.h"
#include "workbench/written_file.h"

#include <fmt/format.h>

#include <optional>
#include <vector>

namespace keenfall::cli {

namespace {

std::string scenario_text(const trials::Trial& trial, base::Seed seed, const Look& look) {
  return wrapped("The matting bench: an invented workshop trims new and uplifted sisal matting.",
                 {},
                 look) +
         wrapped("Knives, one of each: A of C75S, B of X90CrMoV18, C of X153CrMoV12.", {}, look) +
         wrapped(
             fmt::format(
                 "{} runs, drawn from seed {}{}; no blade was blunted. Which stays keen longest?",
                 trial.runs.size(),
                 seed.number,
                 seed == workbench::kMattingBenchSeed ? " (picked; --trial-seed draws another)"
                                                      : ""),
             {},
             look);
}

std::string safety_text(const Look& look) {
  return wrapped(
      "A blunt edge slips: cut away from yourself and the holding hand, clamp the stock, "
      "let a dropped knife fall. Local law and your workplace's rules come first.",
      {},
      look);
}

std::string next_step_text(const JudgeRequest& request, const Look& look) {
  if (request.table_file.empty()) {
    return with_command("Your own readings:", "keenfall judge readings.csv", look) +
           with_command(
               "To see what such a table looks like:", "keenfall demo --table=matting.csv", look);
  }
  return with_command("The readings are in " + request.table_file + ". To judge them again:",
                      "keenfall judge " + base::shell_word(request.table_file),
                      look);
}

base::Problem no_tables_here(const std::string& found) {
  return {.kind = base::ProblemKind::bad_value,
          .sentence = "demo judges its own invented readings, not \"" + found +
                      "\". For a table: keenfall judge " + base::shell_word(found),
          .place = {.column = "--", .found = found}};
}

std::optional<base::Problem> report_written(const TypedOptions& typed,
                                            const trials::Trial& trial,
                                            const std::vector<verdicts::Judgement>& judgements,
                                            const workbench::JudgeOptions& options,
                                            const Surroundings& surroundings) {
  const workbench::JudgedBy by{.hand = hand_of(typed, surroundings),
                               .program_version = surroundings.program_version};
  const workbench::TrialTable table = workbench::trial_table(trial);
  const telling::Report report = workbench::report_of({.trial = trial,
                                                       .judgements = judgements,
                                                       .from = {"the demo's invented readings"},
                                                       .not_in_its_table = table.left_out},
                                                      options,
                                                      by);
  return workbench::write_whole_file(
      *typed.out, page::report_page(report, table.csv), workbench::Existing::is_kept);
}

}  // namespace

Outcome demo_command(std::span<const std::string> words, const Surroundings& surroundings) {
  const auto typed = typed_options(Command::demo, words);
  if (!typed) return wrong_usage(typed.error(), "demo");
  const auto request = judge_request(*typed, surroundings.threads_at_hand);
  if (!request) return wrong_usage(request.error(), "demo");
  if (!request->tables.empty())
    return wrong_usage({no_tables_here(request->tables.front())}, "demo");

  const base::Seed trial_seed = request->trial_seed.value_or(workbench::kMattingBenchSeed);
  const trials::Trial trial = surroundings.use_cases.matting_bench(trial_seed);
  if (!request->table_file.empty()) {
    const std::string table = exchange::long_table_of(trial);
    if (const auto problem =
            workbench::write_whole_file(request->table_file, table, workbench::Existing::is_kept)) {
      return refused({*problem});
    }
  }
  const Judgements judgements = watched(
      *request,
      surroundings,
      [&](const base::Executor& executor, const base::ProgressReport& report) {
        return surroundings.use_cases.judge_trial(trial, request->options, executor, report);
      });
  if (!judgements) return refused(judgements.error());
  if (typed->out) {
    if (const auto problem =
            report_written(*typed, trial, *judgements, request->options, surroundings)) {
      return refused({*problem});
    }
  }
  Outcome outcome = shown_judgements(*judgements, *request, surroundings);
  if (request->json_to == JsonTo::standard_output) return outcome;
  const Look& look = surroundings.look;
  if (typed->out) {
    outcome.out +=
        "\n" + wrapped("The report is in " + shown_as(*typed->out, look) + ".", {}, look);
  }
  outcome.out = scenario_text(trial, trial_seed, look) + "\n" + outcome.out + "\n" +
                next_step_text(*request, look) + safety_text(look);
  return outcome;
}

}  // namespace keenfall::cli
