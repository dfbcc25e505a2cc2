// Laying out plain text: widths, padding, shortening, wrapping, colour, and the fallback to ASCII.
//
// Widths are in columns. Text is UTF-8; one code point counts one column, escape codes count none.
// Text from people's files goes through shown_as first, since only that knows what may be shown.
#pragma once

#include "cli/look.h"
#include "telling/table.h"

#include <cstddef>
#include <string>
#include <string_view>

namespace keenfall::cli {

[[nodiscard]] int columns_of(std::string_view text);

// Bytes of the character that begins at `at`.
[[nodiscard]] std::size_t length_of_character(std::string_view text, std::size_t at);

// Unchanged where Unicode may be shown; else ° becomes " deg", µ becomes u, the rest "?".
// Control characters, which could steer a terminal, become "?" in either case.
[[nodiscard]] std::string shown_as(std::string_view text, const Look& look);

using telling::Side;

// `text`, as the look can show it, brought to exactly `columns`: padded, or shortened.
[[nodiscard]] std::string fitted(std::string_view text, int columns, Side side, const Look& look);

struct Indent {
  int first = 0;
  int rest = 0;
};

// `text` as the look can show it, at most `columns` wide, its middle left out where it is longer.
[[nodiscard]] std::string shortened_in_the_middle(std::string_view text,
                                                  int columns,
                                                  const Look& look);

// Broken at spaces to the look's width; ends in a newline. A word wider than a line stays whole.
// The text may carry colour.
[[nodiscard]] std::string wrapped(std::string_view text, Indent indent, const Look& look);

// Words that end in a colon, wrapped; below them a command to copy, two columns in and on one line
// however long it is, since a break within a quoted name would change it.
[[nodiscard]] std::string with_command(std::string_view words,
                                       std::string_view command,
                                       const Look& look);

// Two colours, sparingly: an answer that holds, and one that is not settled. The words say it too.
[[nodiscard]] std::string as_settled(const std::string& text, const Look& look);
[[nodiscard]] std::string as_not_settled(const std::string& text, const Look& look);

}  // namespace keenfall::cli
