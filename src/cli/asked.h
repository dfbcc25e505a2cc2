// A command of a notebook as it was typed, with all it meets.
#pragma once

#include "cli/hand.h"
#include "cli/outcome.h"
#include "cli/surroundings.h"
#include "cli/text_layout.h"
#include "cli/typed_options.h"

#include <cstddef>
#include <string>

namespace keenfall::cli {

struct Asked {
  std::string command;
  TypedOptions typed;
  const Surroundings& around;

  [[nodiscard]] const std::string& word(std::size_t i) const { return typed.positionals[i]; }
  [[nodiscard]] const NotebookJobs& jobs() const { return around.use_cases.notebook; }
  [[nodiscard]] workbench::Hand hand() const { return hand_of(typed, around); }
};

[[nodiscard]] inline Outcome wrong(const Asked& asked,
                                   const std::string& option,
                                   const std::string& sentence) {
  return wrong_usage({{.sentence = sentence, .place = {.column = option}}}, asked.command);
}

[[nodiscard]] inline Outcome done(const Asked& asked, const std::string& sentence) {
  return {.out = wrapped(shown_as(sentence, asked.around.look), {}, asked.around.look)};
}

// `words` end in a colon; the command stands below them.
[[nodiscard]] inline Outcome done_with_next(const Asked& asked,
                                            const std::string& words,
                                            const std::string& command) {
  return {.out = with_command(words, command, asked.around.look)};
}

}  // namespace keenfall::cli
