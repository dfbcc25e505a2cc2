#include "cli/table_text.h"

#include "cli/ruled_table.h"
#include "cli/text_layout.h"
#include "telling/listed.h"

#include <fmt/format.h>
#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::cli {

namespace {

// "C", or "3  a longer name" where it goes by a number elsewhere; numbers end below each other.
std::vector<std::string> cells_of(const telling::Row& row, std::size_t widest_key) {
  std::vector<std::string> cells = row.cells;
  if (cells.size() < 2) return cells;
  const std::string key = row.key.empty() ? "" : fmt::format("{:>{}}  ", row.key, widest_key);
  cells.front() = "  " + key + cells.front();
  return cells;
}

RuledTable ruled(const telling::Table& table) {
  RuledTable with_rules;
  for (const telling::Column& column : table.columns) {
    with_rules.columns.push_back(
        {.head = column.head, .side = column.side, .drop_order = column.drop_order});
  }
  std::size_t widest_key = 0;
  for (const telling::Row& row : table.rows) widest_key = std::max(widest_key, row.key.size());
  for (const telling::Row& row : table.rows) {
    with_rules.rows.push_back(cells_of(row, widest_key));
  }
  return with_rules;
}

}  // namespace

std::string table_text(const telling::Table& table, const Look& look) {
  if (table.columns.empty()) return {};
  const LaidOutTable result = laid_out(ruled(table), look);
  const std::string columns_said =
      result.left_out.empty()
          ? table.columns_explained
          : "Left out for want of width: " + telling::listed(result.left_out) + ".";
  std::string text =
      result.text + wrapped(shown_as(table.caption + " " + columns_said, look), {}, look);
  for (const std::string& note : table.footnotes) text += wrapped(shown_as(note, look), {}, look);
  return text;
}

}  // namespace keenfall::cli
