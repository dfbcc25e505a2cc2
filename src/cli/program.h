// The whole program but for the process around it: words in, an outcome out.
#pragma once

#include "cli/outcome.h"
#include "cli/surroundings.h"

#include <span>
#include <string>

namespace keenfall::cli {

// `words`: what was typed after the program's name.
[[nodiscard]] Outcome run_program(std::span<const std::string> words,
                                  const Surroundings& surroundings);

}  // namespace keenfall::cli
