// A section of what is told on a terminal: a line that leads to it and its items, of which a long
// list is cut short.
#pragma once

#include "cli/look.h"
#include "telling/section.h"

#include <string>

namespace keenfall::cli {

// Ends in a newline; empty where the list is too long and must not be cut short.
[[nodiscard]] std::string section_text(const telling::Section& section, const Look& look);

}  // namespace keenfall::cli
