#include "exchange/table_in_hand.h"

#include <algorithm>
#include <cstddef>
#include <filesystem>
#include <string_view>
#include <utility>

namespace keenfall::exchange {

namespace {

constexpr char kBetweenTypedCells = ';';

bool needs_quotes(std::string_view cell) {
  return cell.find_first_of(",;\t\"#") != cell.npos || cell.starts_with("sep=") ||
         cell.starts_with("\xEF\xBB\xBF");
}

void append_cell(std::string& text, const std::string& typed) {
  std::string cell = typed;
  std::ranges::replace(cell, '\r', ' ');
  std::ranges::replace(cell, '\n', ' ');
  if (!needs_quotes(cell)) {
    text += cell;
    return;
  }
  text += '"';
  for (const char c : cell) {
    if (c == '"') text += '"';
    text += c;
  }
  text += '"';
}

// Without the empty cells behind the last that holds something.
std::size_t filled_width(const std::vector<std::string>& row) {
  std::size_t width = row.size();
  while (width > 0 && row[width - 1].empty()) --width;
  return width;
}

}  // namespace

TableInHand typed_table(std::string name, const TypedRows& rows) {
  const std::size_t header_width = rows.empty() ? 0 : filled_width(rows.front());
  std::string text;
  for (const std::vector<std::string>& row : rows) {
    const std::size_t filled = filled_width(row);
    const std::size_t width = filled == 0 ? 0 : std::max(header_width, filled);
    for (std::size_t c = 0; c < width; ++c) {
      if (c > 0) text += kBetweenTypedCells;
      if (c < filled) append_cell(text, row[c]);
    }
    text += '\n';
  }
  return {.name = std::move(name), .bytes = std::move(text), .delimiter = kBetweenTypedCells};
}

std::string trial_name_after(const TableInHand& table) {
  return table.delimiter == '\0' ? std::filesystem::path(table.name).stem().string() : table.name;
}

}  // namespace keenfall::exchange
