// The commands of a notebook: new, take, show, log, undo, strike, check, backup.
#pragma once

#include "cli/outcome.h"
#include "cli/surroundings.h"

#include <optional>
#include <span>
#include <string>

namespace keenfall::cli {

// Nothing where it is none of them. words: what stands behind the command.
[[nodiscard]] std::optional<Outcome> notebook_command(const std::string& command,
                                                      std::span<const std::string> words,
                                                      const Surroundings& surroundings);

}  // namespace keenfall::cli
