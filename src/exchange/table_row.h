// One row of a long table, its cells checked one by one.
//
// In: a record and where our columns stand in it. Out: the row's cells, numbers read and within
// their column's range; or nothing, when the row cannot be a reading. Every refused cell goes to
// the ProblemList with its line, header, text and what would be accepted.
#pragma once

#include "exchange/number_cell.h"
#include "exchange/problem_list.h"
#include "exchange/table_columns.h"
#include "trials/edge_life.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace keenfall::exchange {

struct RowCell {
  std::string_view text;         // of a number: the unit glued to it
  std::optional<double> number;  // where the column holds numbers
  std::string_view written;      // as it stands in the file
  std::size_t line = 0;
  std::size_t column = 0;  // 0: known by its header

  [[nodiscard]] bool is_blank() const { return written.empty(); }
};

// Views stay valid as long as the record's.
struct TableRow {
  Origin at;
  std::array<RowCell, kColumnCount> cells;
  bool is_question_marked = false;            // the reading, as in "118?"
  std::optional<trials::EdgeLife> edge_life;  // where the row says how long the edge lasted

  [[nodiscard]] const RowCell& operator[](Column column) const { return cells[index_of(column)]; }
  [[nodiscard]] Origin origin_of(Column column) const {
    const RowCell& cell = (*this)[column];
    return {at.file, cell.line, cell.column};
  }
};

// What the file's rows have in common.
struct RowFormat {
  MatchedColumns columns;
  char delimiter = ',';
  DecimalMark mark = DecimalMark::point;
};

// Rows end with as many cells as the header has, or with further empty ones; else it is reported.
[[nodiscard]] bool has_fitting_length(const Record& record,
                                      const RowFormat& format,
                                      ProblemList& problems);

// nullopt when a cell that the row cannot do without was refused or is empty. A row without a
// reading is taken when it tells how long the edge lasted, an event, a deviation, a note or that
// its run is void.
[[nodiscard]] std::optional<TableRow> read_row(const Record& record,
                                               const RowFormat& format,
                                               ProblemList& problems);

// What a row that is left out says where it can be read.
[[nodiscard]] TableRow row_as_far_as_read(const Record& record, const RowFormat& format);

}  // namespace keenfall::exchange
