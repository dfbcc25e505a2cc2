// For tests: what a notebook holds, so that two notebooks that hold the same say the same, whatever
// numbers their rows have.
#pragma once

#include "notebook/content.h"

#include <algorithm>
#include <cstdio>
#include <map>
#include <string>
#include <utility>
#include <vector>

namespace keenfall::notebook::testing {

inline std::string shown(const Cell& cell) {
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) return std::to_string(*whole);
  if (const auto* text = std::get_if<std::string>(&cell)) return "'" + *text + "'";
  if (const auto* real = std::get_if<double>(&cell)) {
    std::string text(32, ' ');
    text.resize(static_cast<std::size_t>(std::snprintf(text.data(), text.size(), "%a", *real)));
    return text;
  }
  return "-";
}

// One line a row, sorted; the number of a row is left out, and one that refers to it is replaced by
// what is known of that row. `left_out`: tables.
inline std::vector<std::string> content_in_words(const Notebook& notebook,
                                                 const std::vector<std::string>& left_out = {}) {
  std::map<std::string, std::map<std::string, std::string>> known;  // of a table, by its number
  std::vector<std::string> lines;
  for (const ContentTable& table : content_of(notebook)) {
    const bool is_numbered =
        table.key.size() == 1 &&
        std::ranges::count(table.references, table.key.front(), &ContentReference::column) == 0;
    each_content_row(notebook, table.name, [&](const ContentRow& row) {
      std::string line;
      for (std::size_t i = is_numbered ? 1 : 0; i < row.size(); ++i) {
        const auto& column = table.columns[i].name;
        std::string cell = shown(row[i]);
        for (const ContentReference& reference : table.references) {
          if (reference.column == column && cell != "-") cell = known[reference.table].at(cell);
        }
        line += " " + column + "=" + cell;
      }
      if (table.key.size() == 1)
        known[table.name][shown(row[0])] = line.substr(0, line.find(" made_at"));
      if (std::ranges::count(left_out, table.name) == 0) lines.push_back(table.name + line);
    });
  }
  std::ranges::sort(lines);
  return lines;
}

}  // namespace keenfall::notebook::testing
