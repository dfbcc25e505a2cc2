// What the program says about itself: the commands, and the options of each.
#pragma once

#include "cli/look.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::cli {

[[nodiscard]] const std::vector<std::string_view>& command_names();

// What to do next, for somebody who typed only the program's name.
[[nodiscard]] std::string first_words(const Look& look);

// Of the whole program.
[[nodiscard]] std::string help_text(const Look& look);

// Of one command; nullopt when there is no such command.
[[nodiscard]] std::optional<std::string> help_on(std::string_view command, const Look& look);

}  // namespace keenfall::cli
