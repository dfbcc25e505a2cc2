#include "exchange/grid_record.h"

#include "exchange/number_cell.h"
#include "exchange/reading_cell.h"

#include <algorithm>

namespace keenfall::exchange {

Record RecordOfGrid::of(const GridRow& row) {
  cells_.clear();
  const std::size_t width =
      grid_.is_sheet ? std::max(grid_.width(), row.cells.size()) : row.cells.size();
  for (std::size_t c = 0; c < width; ++c) {
    const GridCell& cell = row.at(c);
    cells_.push_back({.text = cell.text,
                      .line = row.line,
                      .column = grid_.is_sheet ? c + 1 : 0,
                      .fault = cell.fault});
  }
  return {.line = row.line, .cells = cells_, .fault = std::nullopt, .column = 0};
}

void write_numbers_with(DecimalMark mark, Grid& grid) {
  if (mark != DecimalMark::comma) return;
  for (GridRow& row : grid.rows) {
    for (GridCell& cell : row.cells) {
      if (cell.is_number) std::ranges::replace(cell.text, '.', ',');
    }
  }
}

DecimalFinding decimal_mark_of(const Grid& grid,
                               std::size_t first_row,
                               const TableParts& left_out,
                               std::size_t file) {
  DecimalTally tally;
  DecimalFinding finding;
  for (std::size_t r = first_row; r < grid.rows.size(); ++r) {
    const GridRow& row = grid.rows[r];
    for (std::size_t c = 0; c < row.cells.size(); ++c) {
      const GridCell& cell = row.cells[c];
      if (left_out.covers({file, row.line, c + 1})) continue;
      if (cell.is_number || cell.text.find_first_of(".,") == std::string::npos) continue;
      const bool was_ambiguous = tally.ambiguous().has_value();
      for (const std::string_view part : parts_of_cell(cell.text)) tally.add(part, row.line, "");
      if (!was_ambiguous && tally.ambiguous()) finding.column = c + 1;
    }
  }
  finding.mark = tally.decision();
  if (finding.mark == DecimalMark::decide) {
    finding.mark = DecimalMark::comma;
    finding.ambiguous = tally.ambiguous()->text;
    finding.line = tally.ambiguous()->line;
  }
  return finding;
}

}  // namespace keenfall::exchange
