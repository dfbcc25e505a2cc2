// For tests: how many columns of a terminal the widest line of a text takes.
#pragma once

#include "cli/text_layout.h"

#include <algorithm>
#include <sstream>
#include <string>

namespace keenfall::cli {

[[nodiscard]] inline int widest_line(const std::string& text) {
  std::istringstream lines(text);
  int widest = 0;
  for (std::string line; std::getline(lines, line);) widest = std::max(widest, columns_of(line));
  return widest;
}

}  // namespace keenfall::cli
