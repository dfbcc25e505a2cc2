#include "workbench/counted_look.h"

#include "base/plain_number.h"
#include "exchange/long_table_text.h"
#include "notebook/digest.h"
#include "wire/judgement_json.h"
#include "workbench/notebook_trouble.h"

#include <algorithm>
#include <cstddef>
#include <utility>

namespace keenfall::workbench {

namespace {

std::string listed(const std::vector<int>& numbers) {
  std::string text;
  for (const int number : numbers) text += (text.empty() ? "" : ",") + std::to_string(number);
  return text;
}

// What looking again while readings come in does to an answer, where no such looks were planned.
std::optional<std::string> caution_about_looks(const notebook::LookCount& count,
                                               const JudgeOptions& options) {
  const std::size_t planned = std::max<std::size_t>(options.looks.size(), 1);
  if (count.states <= planned) return std::nullopt;
  return "These readings were looked at in " + std::to_string(count.states) +
         " different states, this one included, and " +
         (options.looks.empty() ? "no looks were" : std::to_string(planned) + " looks were") +
         " planned. Whoever looks while readings come in, and stops when the answer pleases, finds "
         "differences that chance made more often than is stated here. Looks that are planned "
         "before the first (in a sealed plan, or by --looks) allow for it.";
}

std::string counted_words(std::size_t number, std::size_t states) {
  std::string words =
      "Counted as look " + std::to_string(number) + " at this trial, with its answer.";
  if (states > 1) {
    words +=
        " Its readings were looked at in " + std::to_string(states) + " different states by now.";
  }
  return words;
}

std::string kept_in(const TrialLookedAt& seen,
                    const notebook::StoredJudgement& judgement,
                    const JudgedBy& by) {
  const std::string not_kept = "Not counted as a look, and the answer is not stored: ";
  try {
    return naming_the_file(seen.notebook, [&] {
      auto opened = opened_to_write_within(by.patience, seen.notebook, by.hand);
      if (!opened) return not_kept + opened.error().sentence;
      const auto count =
          notebook::count_look(*opened, seen.trial.name, judgement, authorship_of(by.hand));
      if (!count) return not_kept + count.error().sentence;
      std::string words = counted_words(count->looks, count->states);
      if (notebook::has_changed_since(*opened, seen.last_entry)) {
        words += " The notebook changed while this was judged: what came in since entry " +
                 std::to_string(seen.last_entry) + " is not in the answer.";
      }
      return words;
    });
  } catch (const NotebookTrouble& trouble) {
    return not_kept + trouble.what();
  }
}

}  // namespace

notebook::JudgedInputs inputs_of(const trials::Trial& trial) {
  notebook::JudgedInputs inputs{
      .sha256 = notebook::in_hex(notebook::sha256_of(exchange::long_table_of(trial)))};
  for (const trials::Run& run : trial.runs) {
    if (run.voided_reason) continue;
    ++inputs.runs;
    for (const trials::Reading& reading : run.readings) {
      if (!reading.struck_reason) ++inputs.readings;
    }
  }
  return inputs;
}

std::string question_of(const JudgeOptions& options) {
  std::string text = "--worth-it=" + base::plain_number(options.worth_it_margin);
  const auto add = [&](const std::string& option, const std::string& value) {
    text += " " + option + "=" + value;
  };
  if (options.stop_level) add("--stop-level", base::plain_number(*options.stop_level));
  if (options.stop_reading) add("--stop-reading", *options.stop_reading);
  if (options.model != JudgeOptions().model) add("--model", options.model);
  if (options.claim) {
    add("--claim", *options.claim == verdicts::ClaimAbout::the_steels ? "steels" : "blades");
  }
  if (!options.looks.empty()) add("--looks", listed(options.looks));
  if (options.test_level) add("--test-level", base::plain_number(*options.test_level));
  if (options.kind) add("--kind", *options.kind);
  if (options.rung) add("--rung", std::to_string(*options.rung));
  return text;
}

CountedLook count_look(const TrialLookedAt& seen,
                       const JudgeOptions& options,
                       const JudgedBy& by,
                       const std::vector<verdicts::Judgement>& judgements) {
  notebook::StoredJudgement judgement{.inputs = inputs_of(seen.trial),
                                      .question = question_of(options),
                                      .seed = options.seed,
                                      .program_version = by.program_version};
  const auto before = std::ranges::find_if(seen.looks, [&](const notebook::Look& look) {
    return seen.is_counted_once && look.judgement.inputs == judgement.inputs &&
           look.judgement.question == judgement.question;
  });
  if (before != seen.looks.end()) {
    const notebook::LookCount count = notebook::count_of(seen.looks);
    const auto number = static_cast<std::size_t>(before - seen.looks.begin()) + 1;
    return {.kept_words = counted_words(number, count.states),
            .caution = caution_about_looks(count, options)};
  }
  // Without the caution, which depends on the looks there were: the same question about the same
  // readings has one answer.
  judgement.answer =
      wire::judgement_to_json({.program_version = by.program_version, .judgements = judgements});
  std::vector<notebook::Look> looks = seen.looks;
  looks.push_back({.judgement = judgement});
  return {.kept_words = kept_in(seen, judgement, by),
          .caution = caution_about_looks(notebook::count_of(looks), options)};
}

}  // namespace keenfall::workbench
