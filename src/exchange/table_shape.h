// Which of three shapes a table has: long (a row a reading), wide (cuts down, runs across), or one
// line a run.
//
// In: the first rows of a table and what the person calls its columns. Long and one-line tables
// have a row that names blade, medium and run; a wide table names them down its first column. A
// table that could be two of them is a Problem that asks for --shape.
#pragma once

#include "base/result.h"
#include "exchange/grid.h"
#include "exchange/header_meaning.h"
#include "exchange/table_options.h"

#include <cstddef>
#include <optional>
#include <string_view>

namespace keenfall::exchange {

struct RecognisedShape {
  TableShape shape = TableShape::long_rows;
  std::size_t header_row = 0;    // index into the rows; of a wide table: unused
  std::size_t label_column = 0;  // of a wide table: where its rows are named, from 0
  bool is_certain = false;       // false: nothing was recognised, taken as long
};

[[nodiscard]] base::Result<RecognisedShape> recognise_shape(const Grid& first_rows,
                                                            const TableOptions& options);

// The column a header or label names, by the person's own mapping or by ours.
[[nodiscard]] std::optional<HeaderMeaning> meaning_by(const TableOptions& options,
                                                      std::string_view header);

}  // namespace keenfall::exchange
