// Help on the commands that answer from the reference tables and from models of them.
#pragma once

#include "cli/look.h"

#include <optional>
#include <string>
#include <string_view>

namespace keenfall::cli {

// Nothing where the command is none of these.
[[nodiscard]] std::optional<std::string> reference_help(std::string_view command, const Look& look);

}  // namespace keenfall::cli
