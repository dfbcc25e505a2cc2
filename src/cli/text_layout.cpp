#include "cli/text_layout.h"

#include "base/unseen_character.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>

namespace keenfall::cli {

namespace {

constexpr char kEscape = '\x1b';
// Dark cyan and red from the sixteen colours every terminal has and its owner chose.
constexpr std::string_view kSettledColour = "\x1b[36m";
constexpr std::string_view kNotSettledColour = "\x1b[31m";
constexpr std::string_view kPlain = "\x1b[0m";

// The end of the escape code that starts at `at`: "ESC [ ... letter".
std::size_t end_of_escape(std::string_view text, std::size_t at) {
  const std::size_t letter = text.find('m', at);
  return letter == std::string_view::npos ? text.size() : letter + 1;
}

std::string in_ascii(std::string_view character) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 16> kNear = {{{"°", " deg"},
                                                                                    {"µ", "u"},
                                                                                    {"μ", "u"},
                                                                                    {"–", "-"},
                                                                                    {"—", "-"},
                                                                                    {"“", "\""},
                                                                                    {"”", "\""},
                                                                                    {"’", "'"},
                                                                                    {"×", "x"},
                                                                                    {"…", "..."},
                                                                                    {"·", "."},
                                                                                    {"±", "+-"},
                                                                                    {"≥", ">="},
                                                                                    {"≤", "<="},
                                                                                    {"²", "2"},
                                                                                    {"³", "3"}}};
  for (const auto& [from, to] : kNear) {
    if (from == character) return std::string(to);
  }
  return "?";
}

// The first `columns` characters. Only for text without escape codes.
std::string first_columns(std::string_view text, int columns) {
  std::size_t end = 0;
  for (int i = 0; i < columns && end < text.size(); ++i) end += length_of_character(text, end);
  return std::string(text.substr(0, end));
}

// A word, with a "%" that follows it: "95 %" is not torn apart.
std::size_t end_of_unbroken(std::string_view text, std::size_t begin) {
  std::size_t end = std::min(text.find(' ', begin), text.size());
  while (text.substr(end).starts_with(" %")) end = std::min(text.find(' ', end + 1), text.size());
  return end;
}

std::string coloured(const std::string& text, std::string_view colour, const Look& look) {
  if (!look.colour) return text;
  return std::string(colour) + text + std::string(kPlain);
}

}  // namespace

std::size_t length_of_character(std::string_view text, std::size_t at) {
  return base::bytes_of_character(text, at);
}

int columns_of(std::string_view text) {
  int columns = 0;
  for (std::size_t i = 0; i < text.size();) {
    if (text[i] == kEscape) {
      i = end_of_escape(text, i);
    } else {
      i += length_of_character(text, i);
      ++columns;
    }
  }
  return columns;
}

std::string shown_as(std::string_view text, const Look& look) {
  std::string shown;
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = length_of_character(text, i);
    const std::string_view character = text.substr(i, length);
    const bool is_ascii = length == 1 && static_cast<unsigned char>(text[i]) < 0x80U;
    if (base::is_control(character) || base::turns_direction(character)) {
      shown += '?';
    } else if (look.unicode || is_ascii) {
      shown += character;
    } else {
      shown += in_ascii(character);
    }
    i += length;
  }
  return shown;
}

std::string fitted(std::string_view text, int columns, Side side, const Look& look) {
  std::string shown = shown_as(text, look);
  if (columns_of(shown) > columns) {
    const std::string ellipsis = look.unicode ? "…" : "~";
    shown = first_columns(shown, columns - 1) + ellipsis;
  }
  const auto missing = static_cast<std::size_t>(columns - columns_of(shown));
  const std::string padding(missing, ' ');
  return side == Side::left ? shown + padding : padding + shown;
}

std::string shortened_in_the_middle(std::string_view text, int columns, const Look& look) {
  std::string shown = shown_as(text, look);
  const int length = columns_of(shown);
  if (length <= columns) return shown;
  const int kept_at_end = (columns - 1) / 2;
  const std::string beginning = first_columns(shown, columns - 1 - kept_at_end);
  const std::size_t end_begins = first_columns(shown, length - kept_at_end).size();
  return beginning + (look.unicode ? "…" : "~") + shown.substr(end_begins);
}

std::string wrapped(std::string_view text, Indent indent, const Look& look) {
  std::string lines;
  std::string line(static_cast<std::size_t>(indent.first), ' ');
  bool line_is_empty = true;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t begin = text.find_first_not_of(' ', at);
    if (begin == std::string_view::npos) break;
    const std::size_t end = end_of_unbroken(text, begin);
    const std::string_view word = text.substr(begin, end - begin);
    if (!line_is_empty && columns_of(line) + 1 + columns_of(word) > look.width) {
      lines += line + "\n";
      line = std::string(static_cast<std::size_t>(indent.rest), ' ');
      line_is_empty = true;
    }
    if (!line_is_empty) line += ' ';
    line += word;
    line_is_empty = false;
    at = end;
  }
  return lines + line + "\n";
}

std::string with_command(std::string_view words, std::string_view command, const Look& look) {
  return wrapped(shown_as(words, look), {}, look) + "  " + shown_as(command, look) + "\n";
}

std::string as_settled(const std::string& text, const Look& look) {
  return coloured(text, kSettledColour, look);
}

std::string as_not_settled(const std::string& text, const Look& look) {
  return coloured(text, kNotSettledColour, look);
}

}  // namespace keenfall::cli
