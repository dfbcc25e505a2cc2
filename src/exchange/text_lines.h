// Small facts about a piece of text: its lines, its blanks, how long it is and how it is quoted
// back.
//
// A line ends with CR LF, LF or CR; the first line is 1, as in a text editor. Blanks are spaces,
// tabs and no-break spaces, which spreadsheets leave around cells. All texts are UTF-8.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace keenfall::exchange {

// The line in which the byte at `offset` stands.
[[nodiscard]] std::size_t line_at(std::string_view text, std::size_t offset);

// Without blanks and line ends at both ends.
[[nodiscard]] std::string_view trimmed(std::string_view text);

// Lower case (of ASCII letters), without spaces, '-' and '_': how headers and words are compared.
[[nodiscard]] std::string folded(std::string_view text);

[[nodiscard]] std::size_t character_count(std::string_view text);

// The text as a message repeats it: line ends become spaces, cut after 60 characters.
[[nodiscard]] std::string excerpt(std::string_view text);

// “text”, as an excerpt.
[[nodiscard]] std::string in_quotes(std::string_view text);

}  // namespace keenfall::exchange
