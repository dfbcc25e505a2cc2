// keenfall open: the app's pages, served until somebody stops it.
#pragma once

#include "cli/outcome.h"
#include "cli/surroundings.h"

#include <span>
#include <string>

namespace keenfall::cli {

[[nodiscard]] Outcome open_command(std::span<const std::string> words,
                                   const Surroundings& surroundings);

}  // namespace keenfall::cli
