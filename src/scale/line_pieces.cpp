#include "scale/line_pieces.h"

#include <cstddef>
#include <string>

namespace keenfall::scale {

namespace {

constexpr std::string_view kDividers = ",;:=";
constexpr std::string_view kSigns = "+-";
constexpr std::string_view kLimits = "<>~";
constexpr std::string_view kMarks = ".,";

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_one_of(char c, std::string_view these) { return these.find(c) != std::string_view::npos; }

// The character there, or a blank beyond the ends.
char at(std::string_view text, std::size_t place) {
  return place < text.size() ? text[place] : ' ';
}
char before(std::string_view text, std::size_t place) { return place == 0 ? ' ' : text[place - 1]; }

bool marks_decimals(std::string_view text, std::size_t place) {
  return is_one_of(at(text, place), kMarks) && is_digit(at(text, place + 1));
}

bool is_hyphen(std::string_view text, std::size_t place) {
  return at(text, place) == '-' && is_letter(before(text, place)) && is_letter(at(text, place + 1));
}

std::size_t end_of_number(std::string_view text, std::size_t place) {
  while (is_digit(at(text, place)) || marks_decimals(text, place)) ++place;
  return at(text, place) == '.' ? place + 1 : place;
}

bool goes_on_a_word(std::string_view text, std::size_t place) {
  const char c = at(text, place);
  if (is_hyphen(text, place)) return true;
  if (c == '.') return !marks_decimals(text, place);
  return c != ' ' && c != '?' && !is_digit(c) && !is_one_of(c, kDividers) &&
         !is_one_of(c, kSigns) && !is_one_of(c, kLimits);
}

// A mark before digits that has none before it: its own number's, or not?
bool is_unclear_mark(std::string_view text, std::size_t place) {
  if (!marks_decimals(text, place) || is_digit(before(text, place))) return false;
  const bool is_behind_a_letter = is_letter(before(text, place));
  return text[place] == ',' ? !is_behind_a_letter : is_behind_a_letter;
}

base::Problem unclear_mark() {
  return {.sentence = "the line has a point or comma that may belong to its number or not",
          .accepted = "a number with a digit before its decimal mark"};
}

base::Problem only_a_limit() {
  return {.sentence = "the line says less, more or about a number, which is no reading",
          .accepted = "a number by itself, with its unit"};
}

struct Extent {
  PieceKind kind = PieceKind::word;
  std::size_t end = 0;
};

Extent extent_of_piece(std::string_view text, std::size_t place) {
  const char c = text[place];
  if (is_digit(c) || (c == '.' && marks_decimals(text, place))) {
    return {.kind = PieceKind::number, .end = end_of_number(text, place)};
  }
  if (is_one_of(c, kSigns)) return {.kind = PieceKind::sign, .end = place + 1};
  if (is_one_of(c, kDividers)) return {.kind = PieceKind::divider, .end = place + 1};
  if (c == '?') return {.kind = PieceKind::question, .end = place + 1};
  std::size_t end = place + 1;
  while (goes_on_a_word(text, end)) ++end;
  return {.kind = PieceKind::word, .end = end};
}

}  // namespace

base::Result<std::vector<LinePiece>> line_pieces(std::string_view text) {
  std::vector<LinePiece> pieces;
  std::size_t place = 0;
  while (place < text.size()) {
    if (text[place] == ' ') {
      ++place;
      continue;
    }
    if (is_unclear_mark(text, place)) return base::failed(unclear_mark());
    if (is_one_of(text[place], kLimits)) return base::failed(only_a_limit());
    const Extent extent = extent_of_piece(text, place);
    pieces.push_back({.kind = extent.kind, .text = text.substr(place, extent.end - place)});
    place = extent.end;
  }
  return pieces;
}

}  // namespace keenfall::scale
