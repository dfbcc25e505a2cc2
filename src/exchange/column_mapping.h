// Foreign headers: which column of a person's table is which of ours (--column cuts=strokes).
#pragma once

#include "base/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace keenfall::exchange {

struct ColumnMapping {
  std::string ours;    // a column of the long table
  std::string theirs;  // a header of the person's table

  bool operator==(const ColumnMapping&) const = default;
};
using ColumnMap = std::vector<ColumnMapping>;

// "cuts=strokes". Fails when a side is missing or ours is no column of the long table.
[[nodiscard]] base::Result<ColumnMapping> parse_column_mapping(std::string_view text);

}  // namespace keenfall::exchange
