// A table as content: heads, cells and the words below it. Whoever shows it sees to widths.
#pragma once

#include <string>
#include <vector>

namespace keenfall::telling {

enum class Side { left, right };

struct Column {
  std::string head;
  Side side = Side::right;
  int drop_order = 0;  // 0: always shown; else the lowest goes first where there is no room for all

  bool operator==(const Column&) const = default;
};

struct Row {
  std::string key;                 // a number the row goes by elsewhere; empty: by its name
  std::vector<std::string> cells;  // one for each column; a single one is a line across them all

  bool operator==(const Row&) const = default;
};

struct Table {
  std::string caption;  // a sentence: what the numbers are
  std::vector<Column> columns;
  std::vector<Row> rows;
  std::string columns_explained;  // sentences on columns that may be dropped
  std::vector<std::string> footnotes;

  bool operator==(const Table&) const = default;
};

}  // namespace keenfall::telling
