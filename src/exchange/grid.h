// A sheet of cells with their places: what a table is before anybody knows its shape.
//
// CSV text and spreadsheets both become a grid where headers do not simply stand above rows. Rows
// without content are left out; each keeps the line (or row) it had. Cells are trimmed UTF-8.
#pragma once

#include "exchange/delimited_text.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::exchange {

struct GridCell {
  std::string text;
  bool is_number = false;   // held as a number: its text has a decimal point, whatever the table
  bool is_covered = false;  // repeats the cell it is merged with
  std::string fault;        // why it cannot be used: "The cell holds the error #DIV/0!."
  std::string comment;      // pinned to the cell

  [[nodiscard]] bool is_blank() const { return text.empty() && fault.empty(); }
};

struct GridRow {
  std::size_t line = 0;
  std::vector<GridCell> cells;  // the first is column A

  // A blank one beyond the last.
  [[nodiscard]] const GridCell& at(std::size_t column_index) const;
};

struct Grid {
  std::vector<GridRow> rows;
  bool is_sheet = false;  // of a spreadsheet: places are cells

  [[nodiscard]] std::size_t width() const;
};

// All records until the end; rows with a quote out of place come as a row with a fault.
[[nodiscard]] Grid grid_of(DelimitedReader& reader);

// The first rows only, enough to recognise a shape by.
[[nodiscard]] Grid first_rows_of(std::string_view text, char delimiter);

}  // namespace keenfall::exchange
