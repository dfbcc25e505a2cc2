// The rows of a grid as records, for what reads tables row by row.
#pragma once

#include "exchange/decimal_mark.h"
#include "exchange/grid.h"
#include "exchange/table_part.h"

#include <cstddef>
#include <vector>

namespace keenfall::exchange {

class RecordOfGrid {
 public:
  // Records are filled up to `grid`'s width in a spreadsheet. Keeps a reference to `grid`.
  RecordOfGrid(const Grid& grid, DecimalMark mark) : grid_(grid), mark_(mark) {}

  // Valid until the next one.
  [[nodiscard]] Record of(const GridRow& row);

 private:
  const Grid& grid_;
  DecimalMark mark_;
  std::vector<Cell> cells_;
};

// Numbers that a spreadsheet holds as numbers, written with the table's decimal mark.
void write_numbers_with(DecimalMark mark, Grid& grid);

// point or comma, from the numbers of the cells; `ambiguous` when "1,234" is all there is to go by.
struct DecimalFinding {
  DecimalMark mark = DecimalMark::point;
  std::string ambiguous;  // as written; empty: it is clear
  std::size_t line = 0;
  std::size_t column = 0;  // from 1
};
// `left_out`: parts that have no say; `file`: the grid's.
[[nodiscard]] DecimalFinding decimal_mark_of(const Grid& grid,
                                             std::size_t first_row,
                                             const TableParts& left_out,
                                             std::size_t file);

}  // namespace keenfall::exchange
