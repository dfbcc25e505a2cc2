#include "trust/telling/markdown.h"

#include "base/require.h"

namespace keenfall::trust {

namespace {

std::string in_a_row(const std::vector<std::string>& cells) {
  std::string text = "|";
  for (const std::string& cell : cells) text += " " + cell + " |";
  return text + "\n";
}

}  // namespace

std::string in_markdown(const MarkdownTable& table) {
  std::string text = in_a_row(table.heads) + "|";
  for (std::size_t i = 0; i < table.heads.size(); ++i) text += "---|";
  text += "\n";
  for (const auto& row : table.rows) {
    base::require(row.size() == table.heads.size(), "a row has as many cells as heads");
    text += in_a_row(row);
  }
  return text;
}

}  // namespace keenfall::trust
