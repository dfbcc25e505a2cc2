// Rows chosen by --where COLUMN=VALUE.
//
// A column is named by ours or by the table's own header. Cells are compared as they are written,
// numbers by their size.
#pragma once

#include "base/result.h"

#include <string>
#include <string_view>

namespace keenfall::exchange {

// Only rows (of a wide table: columns) whose cell reads so are taken.
struct RowFilter {
  std::string column;  // ours, or a header of the table
  std::string wanted;

  bool operator==(const RowFilter&) const = default;
};

// "distance_mm=1". Fails when a side is missing.
[[nodiscard]] base::Result<RowFilter> parse_row_filter(std::string_view text);

// Whether the cell says what is wanted.
[[nodiscard]] bool says(std::string_view cell, std::string_view wanted);

}  // namespace keenfall::exchange
