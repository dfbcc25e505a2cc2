#include "exchange/mistyped_number.h"

#include "exchange/text_lines.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>

namespace keenfall::exchange {

namespace {

constexpr std::array<std::string_view, 32> kNumberWords = {
    "zero",    "one",       "two",      "three",    "four",   "five",     "six",      "seven",
    "eight",   "nine",      "ten",      "eleven",   "twelve", "thirteen", "fourteen", "fifteen",
    "sixteen", "seventeen", "eighteen", "nineteen", "twenty", "thirty",   "forty",    "fourty",
    "fifty",   "sixty",     "seventy",  "eighty",   "ninety", "hundred",  "thousand", "dozen"};
constexpr std::array<std::string_view, 4> kJoiningWords = {"a", "and", "half", "point"};

bool is_number_word(std::string_view word) {
  return std::ranges::find(kNumberWords, word) != kNumberWords.end();
}

// "twentyfive" is "twenty" and "five".
bool is_of_number_words(std::string_view word) {
  if (is_number_word(word)) return true;
  return std::ranges::any_of(kNumberWords, [word](std::string_view head) {
    return word.starts_with(head) && is_number_word(word.substr(head.size()));
  });
}

}  // namespace

bool is_number_in_words(std::string_view text) {
  bool names_number = false;
  std::string word;
  const auto is_taken = [&] {
    const bool is_number = is_of_number_words(word);
    names_number = names_number || is_number;
    const bool is_fitting =
        word.empty() || is_number || std::ranges::find(kJoiningWords, word) != kJoiningWords.end();
    word.clear();
    return is_fitting;
  };
  for (const char c : text) {
    const char lower = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    if (lower >= 'a' && lower <= 'z') {
      word += lower;
    } else {
      const bool ends_a_word = c == ' ' || c == '-' || c == '?' || c == '.';
      if (!ends_a_word || !is_taken()) return false;
    }
  }
  return is_taken() && names_number;
}

bool looks_like_digits(std::string_view text) {
  constexpr std::string_view kLookAlikes = "OolI|SB";
  constexpr std::string_view kOfNumbers = "OolI|SB0123456789.,";
  return text.find_first_of(kLookAlikes) != std::string_view::npos &&
         text.find_first_not_of(kOfNumbers) == std::string_view::npos;
}

bool is_mistyped(std::string_view number, std::string_view rest) {
  const std::size_t at = number.rfind(rest);
  return looks_like_digits(rest) && at != std::string_view::npos && at > 0 && number[at - 1] != ' ';
}

std::string letters_among_digits(std::string_view text) {
  return in_quotes(text) + " has letters that look like digits; write digits only.";
}

}  // namespace keenfall::exchange
