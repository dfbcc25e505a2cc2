// What a header that is not understood probably means: "No. of cuts" is cuts, "Sample" a blade.
//
// A guess is for a person to look at. Nothing is taken by it until it is said as a mapping
// (column_mapping.h). None is made where a table has that column already, where two headers could
// be the same column, where the cells beneath are not what the column holds, or of an angle, which
// may be per side or inclusive.
#pragma once

#include "exchange/column_mapping.h"
#include "exchange/grid.h"
#include "exchange/table_columns.h"
#include "exchange/table_options.h"

#include <optional>
#include <span>
#include <string_view>

namespace keenfall::exchange {

// By its words alone; nothing for a header that is understood as it is.
[[nodiscard]] std::optional<Column> guessed_column(std::string_view header);

// For tables that are one trial, their first rows. A mapping holds for all of them, so none is
// guessed that one of them has no header for.
[[nodiscard]] ColumnMap guessed_columns(std::span<const Grid> first_rows,
                                        const TableOptions& options);

}  // namespace keenfall::exchange
