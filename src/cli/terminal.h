// What standard output and standard error are connected to, and what they can show.
#pragma once

#include "cli/look.h"

#include <string>

namespace keenfall::cli {

// From the environment as it stands, in the order the C library reads it.
struct TerminalFacts {
  bool is_terminal = false;
  int columns = 0;     // 0: not known
  std::string locale;  // of LC_ALL, LC_CTYPE, LANG the first that is set
  bool no_color = false;
  bool is_dumb = false;
};

[[nodiscard]] TerminalFacts facts_of_standard_output();
[[nodiscard]] bool standard_error_is_a_terminal();

// Returns once a line has been typed, nobody can type any more, or a signal has come.
void wait_for_enter();

// 80 columns where nothing is known, 60 to 120 otherwise; Unicode in a UTF-8 locale; colour only on
// a terminal that can and where NO_COLOR is not set.
[[nodiscard]] Look look_for(const TerminalFacts& facts);

}  // namespace keenfall::cli
