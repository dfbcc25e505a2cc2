// Help on the commands of a notebook.
#pragma once

#include "cli/look.h"

#include <optional>
#include <string>
#include <string_view>

namespace keenfall::cli {

// Nothing where it is no command of a notebook.
[[nodiscard]] std::optional<std::string> notebook_help(std::string_view command, const Look& look);

}  // namespace keenfall::cli
