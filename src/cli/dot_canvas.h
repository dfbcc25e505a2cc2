// A drawing surface of terminal cells: braille dots, two across and four down in each, or in plain
// ASCII one mark a cell.
#pragma once

#include "cli/look.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::cli {

class DotCanvas {
 public:
  // At least one cell each way.
  DotCanvas(int cell_columns, int cell_rows, const Look& look);

  // Dots from the left and from the top; what lies off the canvas is left out.
  [[nodiscard]] int dots_across() const;
  [[nodiscard]] int dots_down() const;

  // `ascii_mark` shows where only ASCII may be shown.
  void dot(int across, int down, char ascii_mark);

  // Text over the drawing, a character a cell; what would run off the canvas is left out.
  void write(int cell_column, int cell_row, std::string_view text);

  // Row by row, each as wide as the canvas.
  [[nodiscard]] std::vector<std::string> rows() const;

 private:
  int cell_columns_;
  int cell_rows_;
  bool unicode_;
  std::vector<unsigned char> cells_;    // braille pattern, or the ASCII mark
  std::map<int, std::string> written_;  // by index of the cell
};

}  // namespace keenfall::cli
