// Characters that a name from somebody's file is not shown with: controls, and the marks that turn
// the direction of whatever stands behind them, so that "6.2 to 4.1" would read "1.4 ot 2.6".
#pragma once

#include <cstddef>
#include <string_view>

namespace keenfall::base {

// Bytes of the UTF-8 character that begins at `at`: its lead and what follows it.
[[nodiscard]] std::size_t bytes_of_character(std::string_view text, std::size_t at);

// Of one character: U+0000 to U+001F, U+007F, U+0080 to U+009F (Unicode, general category Cc).
[[nodiscard]] bool is_control(std::string_view character);

// U+061C, U+200E, U+200F, U+202A to U+202E, U+2066 to U+2069 (Unicode annex 9, table 1).
[[nodiscard]] bool turns_direction(std::string_view character);

}  // namespace keenfall::base
