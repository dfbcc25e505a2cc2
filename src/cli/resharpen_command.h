// keenfall resharpen: what bringing an edge back takes, on which stone.
#pragma once

#include "cli/outcome.h"
#include "cli/surroundings.h"

#include <span>
#include <string>

namespace keenfall::cli {

[[nodiscard]] Outcome resharpen_command(std::span<const std::string> words,
                                        const Surroundings& surroundings);

}  // namespace keenfall::cli
