// Numbers that are not written in digits: "ten", "twenty-five"; and letters typed for digits: "lO".
//
// A word in a reading's cell tells what happened; a number in words, or one mistyped, must not pass
// for one. English words from zero to thousands. The look-alikes are O, o, l, I, |, S and B (common
// practice, no source).
#pragma once

#include <string>
#include <string_view>

namespace keenfall::exchange {

// Every word of the text is one of a number: "one hundred and four". "one nick" is not.
[[nodiscard]] bool is_number_in_words(std::string_view text);

// Nothing but letters that are mistaken for digits, and digits and marks around them: "O", "l8O".
// False where there is no such letter.
[[nodiscard]] bool looks_like_digits(std::string_view text);

// Does such a rest of a number, "O0" of "1O0", stand at its digits without a blank?
[[nodiscard]] bool is_mistyped(std::string_view number, std::string_view rest);

// What is said of such a number.
[[nodiscard]] std::string letters_among_digits(std::string_view text);

}  // namespace keenfall::exchange
