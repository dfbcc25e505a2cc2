// keenfall simulate: a whole trial from the apex simulator, as a table or in a notebook, with the
// truth beside it.
#pragma once

#include "cli/outcome.h"
#include "cli/surroundings.h"

#include <span>
#include <string>

namespace keenfall::cli {

[[nodiscard]] Outcome simulate_command(std::span<const std::string> words,
                                       const Surroundings& surroundings);

}  // namespace keenfall::cli
