#include "exchange/sheet_cells.h"

#include <gtest/gtest.h>

#include <string>

namespace keenfall::exchange {
namespace {

TEST(SheetCells, OfSeveralSheetsShareOneRoom) {
  SheetRoom room{.cells = 5};
  SheetCells first(room);
  SheetCells second(room);

  EXPECT_TRUE(first.put({.row = 1, .column = 3}, {.text = "104"}));
  EXPECT_TRUE(second.put({.row = 1, .column = 2}, {.text = "99"}));
  EXPECT_FALSE(second.put({.row = 2, .column = 1}, {.text = "101"}));
}

TEST(SheetCells, RunOutOfRoomForTextsToo) {
  SheetRoom room{.bytes = 10};
  SheetCells cells(room);

  EXPECT_TRUE(cells.put({.row = 1, .column = 1}, {.text = std::string(8, 'x')}));
  EXPECT_FALSE(cells.put({.row = 2, .column = 1}, {.text = std::string(8, 'x')}));
}

}  // namespace
}  // namespace keenfall::exchange
