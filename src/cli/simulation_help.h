// Help on simulate, apex and predict.
#pragma once

#include "cli/look.h"

#include <optional>
#include <string>
#include <string_view>

namespace keenfall::cli {

// nullopt where it is another command.
[[nodiscard]] std::optional<std::string> simulation_help(std::string_view command,
                                                         const Look& look);

}  // namespace keenfall::cli
