// Numbers that are not written in digits: "ten", "twenty-five"; and letters typed for digits: "lO".
//
// A word in a reading's cell tells what happened; a number in words, or one mistyped, must not pass
// for one. English words from zero to thousands. The look-alikes are O, o, l, I, |, S and B (common
// practice, no source).
#pragma once

#include <string_view>

namespace keenfall::exchange {

// Every word of the text is one of a number: "one hundred and four". "one nick" is not.
[[nodiscard]] bool is_number_in_words(std::string_view text);

// Nothing but letters that are mistaken for digits; false where there is nothing.
[[nodiscard]] bool looks_like_digits(std::string_view text);

}  // namespace keenfall::exchange
