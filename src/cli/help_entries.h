// Terms in one column, what they mean in the next: how help lists commands and options.
#pragma once

#include "cli/look.h"

#include <string>
#include <string_view>
#include <vector>

namespace keenfall::cli {

struct HelpEntry {
  std::string_view term;
  std::string_view meaning;
};

[[nodiscard]] std::string entries_text(const std::vector<HelpEntry>& entries, const Look& look);

}  // namespace keenfall::cli
