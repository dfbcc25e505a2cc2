// A table in plain text: columns as wide as they must be, numbers to the right, a rule under the
// heads.
#pragma once

#include "cli/look.h"
#include "cli/text_layout.h"

#include <string>
#include <vector>

namespace keenfall::cli {

struct TableColumn {
  std::string head;
  Side side = Side::right;
  int drop_order = 0;  // 0: always shown; else the lowest goes first where the width is short
};

struct RuledTable {
  std::vector<TableColumn> columns;            // the first holds names, which may be shortened
  std::vector<std::vector<std::string>> rows;  // a row of one cell is a line across all columns
  bool wraps_names = false;                    // over several lines in place of shortening them
};

struct LaidOutTable {
  std::string text;
  std::vector<std::string> left_out;  // heads of columns that did not fit
};

[[nodiscard]] LaidOutTable laid_out(const RuledTable& table, const Look& look);

}  // namespace keenfall::cli
