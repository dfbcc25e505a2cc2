// Cells of one sheet as its file lists them, sparse and in any order, put together into a grid.
#pragma once

#include "base/result.h"
#include "exchange/grid.h"

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::exchange {

struct CellPlace {
  std::size_t row = 0;     // 1-based
  std::size_t column = 0;  // 1-based

  auto operator<=>(const CellPlace&) const = default;
};

// "C7"; row 0 when it is none.
[[nodiscard]] CellPlace cell_place(std::string_view name);

// What all sheets of one file may still take up: many small sheets fill memory as one large one
// does, and a text that is stored once may be shown in every cell.
struct SheetRoom {
  std::size_t cells = 5'000'000;    // what a table may have
  std::size_t bytes = 256'000'000;  // of texts and comments; as much as a part of the archive
};

class SheetCells {
 public:
  // `room` outlives it.
  explicit SheetCells(SheetRoom& room) : room_(&room) {}

  // False when there is no more room.
  [[nodiscard]] bool put(CellPlace place, GridCell cell);
  void comment(CellPlace place, const std::string& words);
  void merge(CellPlace first, CellPlace last);

  [[nodiscard]] Grid grid() &&;

 private:
  struct Range {
    CellPlace first;
    CellPlace last;
  };

  std::map<std::size_t, std::vector<GridCell>> rows_;
  std::vector<Range> merged_;
  SheetRoom* room_;
};

[[nodiscard]] base::Problem too_many_cells();
// A number as a cell shows it: shortest, or as a percentage.
[[nodiscard]] GridCell number_grid_cell(double number, bool is_percent);

}  // namespace keenfall::exchange
