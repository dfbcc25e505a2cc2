#include "cli/simulate_command.h"

#include "base/shell_word.h"
#include "cli/hand.h"
#include "cli/own_things.h"
#include "cli/simulate_request.h"
#include "cli/simulated_text.h"
#include "cli/text_layout.h"
#include "cli/typed_options.h"
#include "cli/watched_work.h"
#include "cli/written_answer.h"
#include "exchange/long_table_text.h"
#include "wire/simulation_json.h"
#include "workbench/written_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

namespace keenfall::cli {

namespace {

constexpr const char* kNothingSimulated = "nothing was simulated";
constexpr const char* kNothingWritten = "nothing was written";

// What stands in the way of where the trial is to go: told before the work is done.
std::optional<base::Problem> problem_with_where(const SimulateRequest& request,
                                                const Surroundings& around) {
  if (!request.out.empty()) return workbench::problem_with_new_file(request.out);
  if (request.notebook.empty()) return std::nullopt;
  const auto kept = around.use_cases.notebook.trials(request.notebook);
  if (!kept) return kept.error();
  const auto same = std::ranges::find(*kept, request.plan.name, &notebook::KeptTrial::name);
  if (same == kept->end()) return std::nullopt;
  return workbench::made_trial_is_there(request.plan.name, request.notebook);
}

// Where the trial went, laid out, or why it did not go there.
base::ResultOrProblems<std::string> put_away(const SimulateRequest& request,
                                             const wear::SimulatedTrial& made,
                                             const TypedOptions& typed,
                                             const Surroundings& around) {
  if (!request.out.empty()) {
    const auto problem = workbench::write_whole_file(
        request.out, exchange::long_table_of(made.trial), workbench::Existing::is_kept);
    if (problem) return base::failed_by(*problem);
    return with_command(request.out + " is its table. To judge it:",
                        "keenfall judge " + base::shell_word(request.out),
                        around.look);
  }
  if (request.notebook.empty()) return std::string();
  const auto taken = around.use_cases.notebook.take_made(
      {.notebook = request.notebook,
       .trial = made.trial,
       .made_from = fmt::format("simulated, seed {}", request.plan.seed.number)},
      hand_of(typed, around));
  if (!taken) return tl::unexpected(taken.error());
  return with_command(
      fmt::format("{} has it as the trial “{}”. To judge it:", request.notebook, taken->trial),
      fmt::format("keenfall judge {} --trial={}",
                  base::shell_word(request.notebook),
                  base::shell_word(taken->trial)),
      around.look);
}

bool goes_somewhere(const SimulateRequest& request) {
  return !request.out.empty() || !request.notebook.empty();
}

// A table alone on standard output, for a pipe; what is said of it stands beside it.
Outcome as_table_alone(const SimulateRequest& request,
                       const wear::SimulatedTrial& made,
                       bool quiet,
                       const Look& look) {
  Outcome outcome{.out = exchange::long_table_of(made.trial)};
  if (!quiet) outcome.err = simulated_trial_text(request.plan, made, look);
  return outcome;
}

Outcome told_of(const SimulateRequest& request,
                const wear::SimulatedTrial& made,
                const std::string& where,
                const TypedOptions& typed,
                const Surroundings& around) {
  const Look& look = around.look;
  WrittenAnswer answer;
  if (!typed.quiet) answer.text = simulated_trial_text(request.plan, made, look);
  if (request.truth) {
    answer.text += (answer.text.empty() ? "" : "\n") + truth_text(made, look);
  }
  if (!where.empty() && !typed.quiet) {
    answer.text += "\n" + where;
  }
  if (typed.json) {
    answer.json = wire::simulation_to_json(
        {.program_version = around.program_version, .plan = request.plan, .made = made});
  }
  return delivered(answer, typed.json);
}

}  // namespace

Outcome simulate_command(std::span<const std::string> words, const Surroundings& surroundings) {
  const auto typed = typed_options(Command::simulate, words);
  if (!typed) return wrong_usage(typed.error(), "simulate");
  const auto catalogue = workbench::apex_catalogue(catalogue_files(*typed));
  if (!catalogue) return refused(catalogue.error(), kNothingSimulated);
  const auto request = simulate_request(*typed, *catalogue, surroundings.threads_at_hand);
  if (!request) return wrong_usage(request.error(), "simulate");
  if (const auto problem = problem_with_where(*request, surroundings)) {
    return refused({*problem}, kNothingSimulated);
  }
  const JudgeRequest how{.threads = request->threads, .quiet = typed->quiet};
  const auto made = watched(
      how, surroundings, [&](const base::Executor& executor, const base::ProgressReport& report) {
        return wear::simulated_trial(request->plan, executor, report);
      });
  if (!made) {
    const bool was_stopped = made.error().kind == base::ProblemKind::interrupted;
    return was_stopped ? refused({made.error()}) : wrong_usage({made.error()}, "simulate");
  }
  const auto where = put_away(*request, *made, *typed, surroundings);
  if (!where) return refused(where.error(), kNothingWritten);
  const bool is_table_alone = !goes_somewhere(*request) && !typed->json && !request->truth;
  return with_note_of_own(is_table_alone
                              ? as_table_alone(*request, *made, typed->quiet, surroundings.look)
                              : told_of(*request, *made, *where, *typed, surroundings),
                          catalogue->in_place_of_known,
                          surroundings.look);
}

}  // namespace keenfall::cli
