// The program as a process: arguments, terminal, Ctrl-C, output, exit code. The one place where
// exceptions end.
#pragma once

#include "cli/use_cases.h"

namespace keenfall::cli {

// Returns the process's exit code.
[[nodiscard]] int run_as_process(int argument_count, char** arguments, const UseCases& use_cases);

}  // namespace keenfall::cli
