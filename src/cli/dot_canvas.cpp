#include "cli/dot_canvas.h"

#include "base/require.h"
#include "cli/text_layout.h"

#include <array>
#include <cstddef>

namespace keenfall::cli {

namespace {

constexpr int kDotsAcross = 2;
constexpr int kDotsDown = 4;

// Bit of each dot in a braille character, by column then row (Unicode 15, block U+2800).
constexpr std::array<std::array<unsigned char, kDotsDown>, kDotsAcross> kDotBits = {
    {{0x01, 0x02, 0x04, 0x40}, {0x08, 0x10, 0x20, 0x80}}};

// U+2800 + pattern, in UTF-8.
std::string braille(unsigned char pattern) {
  if (pattern == 0) return " ";
  const unsigned code_point = 0x2800U + pattern;
  return {static_cast<char>(0xE0U | (code_point >> 12U)),
          static_cast<char>(0x80U | ((code_point >> 6U) & 0x3FU)),
          static_cast<char>(0x80U | (code_point & 0x3FU))};
}

}  // namespace

DotCanvas::DotCanvas(int cell_columns, int cell_rows, const Look& look)
    : cell_columns_(cell_columns), cell_rows_(cell_rows), unicode_(look.unicode) {
  base::require(cell_columns >= 1 && cell_rows >= 1, "a canvas has at least one cell each way");
  cells_.resize(static_cast<std::size_t>(cell_columns) * static_cast<std::size_t>(cell_rows));
}

int DotCanvas::dots_across() const {
  return unicode_ ? cell_columns_ * kDotsAcross : cell_columns_;
}

int DotCanvas::dots_down() const { return unicode_ ? cell_rows_ * kDotsDown : cell_rows_; }

void DotCanvas::dot(int across, int down, char ascii_mark) {
  if (across < 0 || down < 0 || across >= dots_across() || down >= dots_down()) return;
  const int column = unicode_ ? across / kDotsAcross : across;
  const int row = unicode_ ? down / kDotsDown : down;
  unsigned char& cell =
      cells_[static_cast<std::size_t>(row) * static_cast<std::size_t>(cell_columns_) +
             static_cast<std::size_t>(column)];
  if (unicode_) {
    const auto bit = kDotBits[static_cast<std::size_t>(across % kDotsAcross)]
                             [static_cast<std::size_t>(down % kDotsDown)];
    cell = static_cast<unsigned char>(cell | bit);
  } else {
    cell = static_cast<unsigned char>(ascii_mark);
  }
}

void DotCanvas::write(int cell_column, int cell_row, std::string_view text) {
  for (std::size_t i = 0; i < text.size() && cell_column < cell_columns_; ++cell_column) {
    const std::size_t length = length_of_character(text, i);
    written_[cell_row * cell_columns_ + cell_column] = std::string(text.substr(i, length));
    i += length;
  }
}

std::vector<std::string> DotCanvas::rows() const {
  std::vector<std::string> rows;
  for (int row = 0; row < cell_rows_; ++row) {
    std::string line;
    for (int column = 0; column < cell_columns_; ++column) {
      const int index = row * cell_columns_ + column;
      const unsigned char cell = cells_[static_cast<std::size_t>(index)];
      const auto written = written_.find(index);
      if (written != written_.end()) {
        line += written->second;
      } else if (unicode_) {
        line += braille(cell);
      } else {
        line += cell == 0 ? ' ' : static_cast<char>(cell);
      }
    }
    rows.push_back(line);
  }
  return rows;
}

}  // namespace keenfall::cli
