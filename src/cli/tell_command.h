// keenfall tell TABLE...|FILE.keen: from tables or a notebook to a report that others can check.
#pragma once

#include "cli/outcome.h"
#include "cli/surroundings.h"

#include <span>
#include <string>

namespace keenfall::cli {

[[nodiscard]] Outcome tell_command(std::span<const std::string> words,
                                   const Surroundings& surroundings);

}  // namespace keenfall::cli
