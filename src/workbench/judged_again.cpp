#include "workbench/judged_again.h"

#include "base/plain_number.h"
#include "base/shell_word.h"
#include "exchange/kind_definition.h"

#include <algorithm>
#include <vector>

namespace keenfall::workbench {

namespace {

// Those that a reader of the table does not know by themselves, each once.
std::vector<std::string> kinds_to_define(const trials::Trial& trial) {
  std::vector<std::string> definitions;
  for (const trials::ReadingSeries& series : trial.series) {
    const trials::ReadingKind* const known = trials::find_reading_kind(series.kind.name);
    if (known != nullptr && *known == series.kind) continue;
    const std::string definition = exchange::kind_definition_text(series.kind);
    if (std::ranges::count(definitions, definition) == 0) definitions.push_back(definition);
  }
  return definitions;
}

std::string with_commas(const std::vector<int>& looks) {
  std::string text;
  for (const int runs : looks) text += (text.empty() ? "" : ",") + std::to_string(runs);
  return text;
}

// Each as "--name=value"; only what is not asked for by itself.
std::vector<std::string> options_asked(const JudgeOptions& options) {
  const JudgeOptions by_itself;
  std::vector<std::string> words;
  const auto ask = [&words](const std::string& name, const std::string& value) {
    words.push_back("--" + name + "=" + value);
  };
  if (options.kind) ask("kind", *options.kind);
  if (options.worth_it_margin != by_itself.worth_it_margin) {
    ask("worth-it", base::plain_number(options.worth_it_margin));
  }
  if (options.stop_level) ask("stop-level", base::plain_number(*options.stop_level));
  if (options.stop_reading) ask("stop-reading", *options.stop_reading);
  if (options.rung) ask("rung", std::to_string(*options.rung));
  if (options.test_level) ask("test-level", base::plain_number(*options.test_level));
  if (options.model != by_itself.model) ask("model", options.model);
  if (options.claim) {
    ask("claim", *options.claim == verdicts::ClaimAbout::the_steels ? "steels" : "blades");
  }
  if (!options.looks.empty()) ask("looks", with_commas(options.looks));
  if (options.told_in != by_itself.told_in) ask("told-in", text_of(options.told_in));
  ask("seed", std::to_string(options.seed.number));
  return words;
}

}  // namespace

std::string judged_again_by(const trials::Trial& trial,
                            const JudgeOptions& options,
                            const std::string& table) {
  std::string command = "keenfall judge " + base::shell_word(table);
  for (const std::string& definition : kinds_to_define(trial)) {
    command += " " + base::shell_word("--define-kind=" + definition);
  }
  for (const std::string& word : options_asked(options)) command += " " + base::shell_word(word);
  return command;
}

}  // namespace keenfall::workbench
