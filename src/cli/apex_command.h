// keenfall apex: one simulated edge over the cuts, or the steels, media and finishes that the
// simulator knows.
#pragma once

#include "cli/outcome.h"
#include "cli/surroundings.h"

#include <span>
#include <string>

namespace keenfall::cli {

[[nodiscard]] Outcome apex_command(std::span<const std::string> words,
                                   const Surroundings& surroundings);

}  // namespace keenfall::cli
