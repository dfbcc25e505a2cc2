#include "exchange/sheet_cells.h"

#include "base/plain_number.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace keenfall::exchange {

namespace {

constexpr std::size_t kMostColumns = 16'384;  // of both formats' programs
constexpr std::size_t kMostRows = 1'048'576;
constexpr std::size_t kLargestMerge = 20'000;  // cells; a larger one is a decoration

}  // namespace

CellPlace cell_place(std::string_view name) {
  CellPlace place;
  std::size_t i = 0;
  while (i < name.size() && name[i] >= 'A' && name[i] <= 'Z' && place.column <= kMostColumns) {
    place.column = place.column * 26 + static_cast<std::size_t>(name[i++] - 'A') + 1;
  }
  while (i < name.size() && name[i] >= '0' && name[i] <= '9' && place.row <= kMostRows) {
    place.row = place.row * 10 + static_cast<std::size_t>(name[i++] - '0');
  }
  if (i != name.size() || place.column == 0 || place.row == 0) return {};
  return place;
}

bool SheetCells::put(CellPlace place, GridCell cell) {
  if (place.row == 0 || place.row > kMostRows || place.column == 0 || place.column > kMostColumns) {
    return true;  // no program shows such a cell
  }
  cell.text = std::string(trimmed(cell.text));
  if (cell.is_blank() && cell.comment.empty()) return true;
  std::vector<GridCell>& row = rows_[place.row];
  const std::size_t cells = place.column > row.size() ? place.column - row.size() : 0;
  const std::size_t bytes = cell.text.size() + cell.fault.size() + cell.comment.size();
  if (cells > room_->cells || bytes > room_->bytes) return false;
  room_->cells -= cells;
  room_->bytes -= bytes;
  if (cells > 0) row.resize(place.column);
  if (cell.comment.empty()) cell.comment = std::move(row[place.column - 1].comment);
  row[place.column - 1] = std::move(cell);
  return true;
}

void SheetCells::comment(CellPlace place, const std::string& words) {
  const auto row = rows_.find(place.row);
  const bool is_there =
      row != rows_.end() && place.column >= 1 && place.column <= row->second.size();
  if (is_there) {
    row->second[place.column - 1].comment = std::string(trimmed(words));
  } else {
    (void)put(place, {.comment = std::string(trimmed(words))});
  }
}

void SheetCells::merge(CellPlace first, CellPlace last) {
  if (first.row == 0 || last.row < first.row || last.column < first.column) return;
  const std::size_t rows = last.row - first.row + 1;
  const std::size_t columns = last.column - first.column + 1;
  if (rows > kLargestMerge || columns > kLargestMerge || rows * columns > kLargestMerge) return;
  merged_.push_back({.first = first, .last = last});
}

Grid SheetCells::grid() && {
  for (const Range& range : merged_) {
    const auto row = rows_.find(range.first.row);
    if (row == rows_.end() || row->second.size() < range.first.column) continue;
    GridCell covering = row->second[range.first.column - 1];
    covering.is_covered = true;
    covering.comment.clear();
    for (std::size_t r = range.first.row; r <= range.last.row; ++r) {
      for (std::size_t c = range.first.column; c <= range.last.column; ++c) {
        if (r == range.first.row && c == range.first.column) continue;
        if (!put({.row = r, .column = c}, covering)) break;
      }
    }
  }
  Grid grid{.is_sheet = true};
  for (auto& [line, cells] : rows_) {
    const bool has_content = std::ranges::any_of(
        cells, [](const GridCell& cell) { return !cell.is_blank() || !cell.comment.empty(); });
    if (has_content) grid.rows.push_back({.line = line, .cells = std::move(cells)});
  }
  return grid;
}

base::Problem too_many_cells() {
  return {.kind = base::ProblemKind::too_large,
          .sentence =
              "The spreadsheet has more than 5,000,000 cells, or more than 256 MB of text, in all "
              "its sheets; it is not taken in.",
          .accepted = "a smaller spreadsheet, or one kind of reading at a time"};
}

GridCell number_grid_cell(double number, bool is_percent) {
  if (!is_percent) return {.text = base::plain_number(number), .is_number = true};
  // A hundred times 0.35 is not quite 35.
  constexpr double kSteps = 1e9;
  const double percent = std::round(number * 100 * kSteps) / kSteps;
  return {.text = base::plain_number(percent) + "%", .is_number = true};
}

}  // namespace keenfall::exchange
