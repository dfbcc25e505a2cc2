// A sheet that is being typed, as the app's pages send it and have it back.
// Shapes: docs/wire/api.json (TypedSheet, KeepSheet, KeptSheet).
#pragma once

#include "base/result.h"
#include "exchange/table_in_hand.h"
#include "notebook/typed_sheets.h"

#include <cstdint>
#include <optional>
#include <string>

namespace keenfall::wire {

struct SheetToKeep {
  std::int64_t goes_on_from = 0;  // revision; 0: there was none
  std::string cells;              // JSON: a list of rows, each a list of texts
};

[[nodiscard]] base::ResultOrProblems<SheetToKeep> sheet_to_keep_from(const std::string& body);

// As SheetToKeep::cells.
[[nodiscard]] std::string cells_in_json(const exchange::TypedRows& rows);

// Is there more in it than names of rows and columns, and one unit beside them? As
// SheetToKeep::cells.
[[nodiscard]] bool holds_more_than_labels(const std::string& cells);

// Nothing kept: revision 0, no cells.
[[nodiscard]] std::string typed_sheet_to_json(const std::optional<notebook::TypedSheet>& sheet);
[[nodiscard]] std::string kept_sheet_to_json(std::int64_t revision);

}  // namespace keenfall::wire
