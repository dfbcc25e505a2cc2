// A scale's line taken apart: numbers, words, signs, question marks, and what divides them.
//
// In: printable ASCII. A comma or a point between digits belongs to the number; a hyphen between
// letters to the word. Fails where a mark could belong to a number or not (",5", "ST.5"), and for
// signs of less, more and about.
#pragma once

#include "base/result.h"

#include <string_view>
#include <vector>

namespace keenfall::scale {

enum class PieceKind {
  number,    // digits with points and commas between them, perhaps a point before or behind them
  word,      // letters and other characters
  sign,      // + or -
  question,  // ?
  divider    // , ; : =
};

struct LinePiece {
  PieceKind kind = PieceKind::word;
  std::string_view text;  // of the line that was taken apart

  bool operator==(const LinePiece&) const = default;
};

[[nodiscard]] base::Result<std::vector<LinePiece>> line_pieces(std::string_view text);

}  // namespace keenfall::scale
