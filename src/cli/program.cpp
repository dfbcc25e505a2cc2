#include "cli/program.h"

#include "base/shell_word.h"
#include "cli/apex_command.h"
#include "cli/bench_scale_command.h"
#include "cli/demo_command.h"
#include "cli/help_text.h"
#include "cli/judge_command.h"
#include "cli/notebook_commands.h"
#include "cli/open_command.h"
#include "cli/predict_command.h"
#include "cli/reference_commands.h"
#include "cli/resharpen_command.h"
#include "cli/scale_commands.h"
#include "cli/simulate_command.h"
#include "cli/tell_command.h"
#include "cli/typed_options.h"
#include "cli/written_answer.h"

#include <algorithm>
#include <string_view>
#include <vector>

namespace keenfall::cli {

namespace {

using Words = std::span<const std::string>;

Outcome said(const std::string& text) { return {.out = text}; }

Outcome usage_fault(const std::string& sentence, const std::string& command) {
  return wrong_usage({{.sentence = sentence, .place = {.column = "--"}}}, command);
}

std::string joined(Words words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : " ") + word;
  return text;
}

// The tables' answer, or a wrong usage: what was asked for is what was typed.
Outcome answered_or_wrong(const base::Result<std::string>& answer, const std::string& command) {
  return answer ? said(*answer) : wrong_usage({answer.error()}, command);
}

Outcome convert(Words words, const Look& look) {
  std::vector<std::string> kept(words.begin(), words.end());
  std::erase(kept, "to");
  if (kept.size() < 2) {
    return usage_fault("convert needs a quantity and a unit, as in: keenfall convert 400gf N",
                       "convert");
  }
  const std::string unit = kept.back();
  kept.pop_back();
  return answered_or_wrong(convert_command(joined(kept), unit, look), "convert");
}

Outcome scale(const std::string& command, Words words, const Surroundings& surroundings) {
  const auto typed = typed_options(Command::scale, words);
  if (!typed) return wrong_usage(typed.error(), command);
  const std::string asked = joined(typed->positionals);
  const auto answer =
      command == "phases"
          ? phases_command(asked, surroundings.program_version, surroundings.look)
          : hardness_command(asked, surroundings.program_version, surroundings.look);
  return answer ? delivered(*answer, typed->json) : wrong_usage({answer.error()}, command);
}

bool asks_for_help(const std::string& word) { return word == "--help" || word == "-h"; }

std::string unknown_command_sentence(const std::string& word) {
  std::string sentence = "There is no command \"" + word + "\".";
  const bool looks_like_a_file = word.find_first_of("./\\") != std::string::npos;
  if (looks_like_a_file)
    return sentence + " To judge a table: keenfall judge " + base::shell_word(word);
  sentence += " The commands are ";
  const auto& names = command_names();
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) sentence += i + 1 == names.size() ? " and " : ", ";
    sentence += names[i];
  }
  return sentence + ".";
}

Outcome help(Words words, const Look& look) {
  if (words.empty()) return said(help_text(look));
  const auto text = help_on(words.front(), look);
  return text ? said(*text) : usage_fault(unknown_command_sentence(words.front()), "");
}

}  // namespace

Outcome run_program(Words words, const Surroundings& surroundings) {
  const Look& look = surroundings.look;
  if (words.empty()) return said(first_words(look));
  const std::string& command = words.front();
  const Words rest = words.subspan(1);
  if (asks_for_help(command)) return said(help_text(look));
  if (command == "--version") return said("keenfall " + surroundings.program_version + "\n");
  if (command == "help") return help(rest, look);
  const bool is_known = std::ranges::count(command_names(), std::string_view(command)) > 0;
  if (!is_known) return usage_fault(unknown_command_sentence(command), "");
  if (std::ranges::any_of(rest, asks_for_help)) return said(*help_on(command, look));
  if (command == "judge") return judge_command(rest, surroundings);
  if (command == "scale") return bench_scale_command(rest, surroundings);
  if (command == "open") return open_command(rest, surroundings);
  if (command == "demo") return demo_command(rest, surroundings);
  if (command == "simulate") return simulate_command(rest, surroundings);
  if (command == "apex") return apex_command(rest, surroundings);
  if (command == "predict") return predict_command(rest, surroundings);
  if (command == "tell") return tell_command(rest, surroundings);
  if (command == "resharpen") return resharpen_command(rest, surroundings);
  if (auto outcome = notebook_command(command, rest, surroundings)) return *outcome;
  if (command == "phases" || command == "hardness") return scale(command, rest, surroundings);
  for (const std::string& word : rest) {
    if (word.starts_with("--")) {
      return usage_fault(command + " has no option \"" + word + "\".", command);
    }
  }
  if (command == "steels") return answered_or_wrong(steels_command(joined(rest), look), command);
  if (command == "grits") return answered_or_wrong(grits_command(joined(rest), look), command);
  return convert(rest, look);
}

}  // namespace keenfall::cli
