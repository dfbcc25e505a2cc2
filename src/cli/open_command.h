// keenfall open: the app's pages, served until somebody stops it.
#pragma once

#include "cli/outcome.h"
#include "cli/surroundings.h"

#include <span>
#include <string>
#include <string_view>

namespace keenfall::cli {

// As the menu starts it: in a terminal window that is there for it alone. The window must say what
// it is, and stay until what went wrong in it has been read.
inline constexpr std::string_view kOwnWindow = "--own-window";

[[nodiscard]] Outcome open_command(std::span<const std::string> words,
                                   const Surroundings& surroundings);

}  // namespace keenfall::cli
