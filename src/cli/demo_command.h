// keenfall demo: an invented trial judged, to see what an answer looks like.
#pragma once

#include "cli/outcome.h"
#include "cli/surroundings.h"

#include <span>
#include <string>

namespace keenfall::cli {

[[nodiscard]] Outcome demo_command(std::span<const std::string> words,
                                   const Surroundings& surroundings);

}  // namespace keenfall::cli
