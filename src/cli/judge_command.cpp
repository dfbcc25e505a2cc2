#include "cli/judge_command.h"

#include "cli/hand.h"
#include "cli/judgement_text.h"
#include "cli/text_layout.h"
#include "cli/typed_options.h"
#include "cli/watched_work.h"
#include "wire/judgement_json.h"
#include "workbench/written_file.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace keenfall::cli {

namespace {

base::Problem no_table_problem() {
  return {.kind = base::ProblemKind::missing,
          .sentence = "There is no table to judge. Name one: keenfall judge readings.csv",
          .place = {.column = "--"}};
}

// "--json out.json" leaves out.json standing as a table: said before anybody looks for it.
std::optional<base::Problem> json_file_among_tables(const JudgeRequest& request) {
  if (request.json_to != JsonTo::standard_output) return std::nullopt;
  const auto file = std::ranges::find_if(
      request.tables, [](const std::string& table) { return table.ends_with(".json"); });
  if (file == request.tables.end()) return std::nullopt;
  return base::Problem{.kind = base::ProblemKind::bad_value,
                       .sentence = "\"" + *file +
                                   "\" stands where a table is expected. To write the "
                                   "JSON into it: --json=" +
                                   *file,
                       .place = {.column = "--", .found = *file}};
}

// How a notebook kept the answer: below it, or beside it where only JSON or the answers are wanted.
void add_kept_words(const std::string& words,
                    const JudgeRequest& request,
                    const Look& look,
                    Outcome& outcome) {
  const std::string text = wrapped(shown_as(words, look), {}, look);
  if (request.quiet || request.json_to == JsonTo::standard_output) {
    outcome.err = text + outcome.err;
  } else {
    outcome.out += "\n" + text;
  }
}

}  // namespace

Outcome shown_judgements(const std::vector<verdicts::Judgement>& judgements,
                         const JudgeRequest& request,
                         const Surroundings& surroundings) {
  const bool any_usable = std::ranges::any_of(
      judgements, [](const verdicts::Judgement& judgement) { return judgement.fit.usable; });
  Outcome outcome{.code = any_usable ? ExitCode::answered : ExitCode::not_usable};
  std::string json;
  if (request.json_to != JsonTo::nowhere) {
    json = wire::judgement_to_json(
        {.program_version = surroundings.program_version, .judgements = judgements});
  }
  if (request.json_to == JsonTo::standard_output) {
    outcome.out = json;
    return outcome;
  }
  const HowMuch how_much = request.quiet ? HowMuch::answers_only : HowMuch::everything;
  outcome.out = judgements_text(judgements, how_much, surroundings.look);
  if (request.json_to == JsonTo::file) {
    const auto problem =
        workbench::write_whole_file(request.json_file, json, workbench::Existing::is_replaced);
    if (problem) {
      outcome.err = in_words(*problem) + "\n";
      outcome.code = ExitCode::file_trouble;
    }
  }
  return outcome;
}

Outcome judge_command(std::span<const std::string> words, const Surroundings& surroundings) {
  const auto typed = typed_options(Command::judge, words);
  if (!typed) return wrong_usage(typed.error(), "judge");
  const auto request = judge_request(*typed, surroundings.threads_at_hand);
  if (!request) return wrong_usage(request.error(), "judge");
  if (request->tables.empty()) return wrong_usage({no_table_problem()}, "judge");
  if (const auto problem = json_file_among_tables(*request))
    return wrong_usage({*problem}, "judge");
  const workbench::JudgedBy by{.hand = hand_of(*typed, surroundings),
                               .program_version = surroundings.program_version};
  const auto judged =
      watched(*request,
              surroundings,
              [&](const base::Executor& executor, const base::ProgressReport& report) {
                return surroundings.use_cases.judge_files(
                    request->tables, request->options, by, executor, report);
              });
  if (!judged) return refused(judged.error());
  Outcome outcome = shown_judgements(judged->judgements, *request, surroundings);
  if (!judged->kept_words.empty()) {
    add_kept_words(judged->kept_words, *request, surroundings.look, outcome);
  }
  return outcome;
}

}  // namespace keenfall::cli
