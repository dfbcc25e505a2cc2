// What a person says beside the table: foreign headers, own kinds of reading, the decimal mark.
#pragma once

#include "exchange/column_mapping.h"
#include "exchange/decimal_mark.h"
#include "exchange/row_filter.h"
#include "trials/reading_kind.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::exchange {

enum class TableShape {
  decide,
  long_rows,  // a row a reading
  wide,       // cuts down, runs across
  runs        // a line a run
};

// "long", "wide" or "runs"; nullopt for anything else.
[[nodiscard]] std::optional<TableShape> table_shape_named(std::string_view name);

struct TableOptions {
  ColumnMap columns;                               // ours -> theirs
  std::vector<trials::ReadingKind> defined_kinds;  // before those known by themselves
  std::string default_kind;  // of rows that name none; empty: decided and said
  DecimalMark decimal_mark = DecimalMark::decide;
  TableShape shape = TableShape::decide;
  std::vector<std::string> sheets;  // of spreadsheets; empty: all that hold a table
  std::vector<RowFilter> where;     // all must hold
};

}  // namespace keenfall::exchange
