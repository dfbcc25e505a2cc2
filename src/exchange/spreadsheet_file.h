// The sheets of a spreadsheet file: Office Open XML (.xlsx) or OpenDocument (.ods).
//
// In: the file's bytes. Out: each sheet's name and its grid. A formula stands for its last
// calculated result; one without a result, and an error, become a cell with a fault. Dates are
// written 2024-05-01, percentages with their sign ("35%"), booleans TRUE and FALSE. A merged cell
// stands in every cell it covers. Sources: ECMA-376 part 1 (SpreadsheetML), OpenDocument 1.2 part
// 1. docs/decisions/0006-spreadsheets.md says why it is read this way.
#pragma once

#include "base/result.h"
#include "exchange/grid.h"

#include <string>
#include <string_view>
#include <vector>

namespace keenfall::exchange {

struct Sheet {
  std::string name;
  Grid grid;
  bool is_hidden = false;
};

[[nodiscard]] bool is_spreadsheet(std::string_view bytes);

[[nodiscard]] base::Result<std::vector<Sheet>> sheets_of(std::string_view bytes);

}  // namespace keenfall::exchange
