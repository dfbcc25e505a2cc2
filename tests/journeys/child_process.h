// For tests: runs a program as a person's shell would, and keeps what it said.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace keenfall::journeys {

struct CommandLine {
  std::string program;
  std::vector<std::string> words;
  std::map<std::string, std::string> environment;  // on top of the present one; empty: unset
  bool on_a_terminal = false;         // standard output and error are one terminal of 100 columns
  bool errors_on_a_terminal = false;  // standard error alone, as in "keenfall ... > file"
  std::string interrupt_at;           // Ctrl-C once standard error (or the terminal) has said this
  bool with_closed_output = false;
  bool reader_goes_away = false;  // nobody reads standard output, as after "| head"
};

struct Said {
  int exit_code = -1;  // 128 + signal when a signal ended it
  std::string out;
  std::string err;  // empty on a terminal, where both are in `out`
};

[[nodiscard]] Said run(const CommandLine& command);

}  // namespace keenfall::journeys
