#include "exchange/grid.h"

#include <algorithm>

namespace keenfall::exchange {

namespace {

constexpr std::size_t kRowsToRecogniseBy = 60;

GridRow grid_row(const Record& record) {
  GridRow row{.line = record.line};
  row.cells.reserve(record.cells.size());
  for (const Cell& cell : record.cells) row.cells.push_back({.text = std::string(cell.text)});
  if (record.fault) {
    row.cells.push_back(
        {.text = std::string(record.fault->cell.text), .fault = record.fault->sentence});
  }
  return row;
}

}  // namespace

const GridCell& GridRow::at(std::size_t column_index) const {
  static const GridCell kBlank;
  return column_index < cells.size() ? cells[column_index] : kBlank;
}

std::size_t Grid::width() const {
  std::size_t width = 0;
  for (const GridRow& row : rows) width = std::max(width, row.cells.size());
  return width;
}

Grid grid_of(DelimitedReader& reader) {
  Grid grid;
  while (const auto record = reader.next()) grid.rows.push_back(grid_row(*record));
  return grid;
}

Grid first_rows_of(std::string_view text, char delimiter) {
  Grid grid;
  DelimitedReader reader(text, delimiter);
  while (grid.rows.size() < kRowsToRecogniseBy) {
    const auto record = reader.next();
    if (!record) break;
    grid.rows.push_back(grid_row(*record));
  }
  return grid;
}

}  // namespace keenfall::exchange
