// Tables in Markdown.
#pragma once

#include <string>
#include <vector>

namespace keenfall::trust {

struct MarkdownTable {
  std::vector<std::string> heads;
  std::vector<std::vector<std::string>> rows;  // as many cells as heads
};

[[nodiscard]] std::string in_markdown(const MarkdownTable& table);

}  // namespace keenfall::trust
