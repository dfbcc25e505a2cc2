// What the program's exit code says. docs/command-line.md holds the same table.
#pragma once

#include "base/result.h"

#include <vector>

namespace keenfall::cli {

enum class ExitCode {
  answered = 0,       // a usable fit, also when its verdict is "not settled"; help; a list
  not_usable = 1,     // the fit is not usable: there is no verdict
  wrong_usage = 2,    // a command, an option or its value is wrong
  table_refused = 3,  // a table, or part of it, cannot be taken, or there is nothing to judge
  file_trouble = 4,   // a file cannot be read or written
  our_fault = 70,     // a fault in Keenfall (EX_SOFTWARE of sysexits.h)
  stopped = 130       // stopped by Ctrl-C (128 + SIGINT, the shells' custom)
};

// The code for what was refused: a stop first, then a file, then the table, then an option.
[[nodiscard]] ExitCode exit_code_of(const std::vector<base::Problem>& problems);

}  // namespace keenfall::cli
