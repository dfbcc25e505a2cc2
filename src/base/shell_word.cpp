#include "base/shell_word.h"

#include <algorithm>
#include <string_view>

namespace keenfall::base {

namespace {

// By POSIX (Shell Command Language, 2.2), and letters beyond ASCII.
bool means_itself(char c) {
  constexpr std::string_view kPlain = "_./@%+=:,-";
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
         static_cast<unsigned char>(c) >= 0x80 || kPlain.find(c) != std::string_view::npos;
}

}  // namespace

std::string shell_word(const std::string& text) {
  if (!text.empty() && std::ranges::all_of(text, means_itself)) return text;
  std::string word = "'";
  for (const char c : text) {
    if (c == '\'') {
      word += "'\\''";
    } else {
      word += c;
    }
  }
  return word + "'";
}

}  // namespace keenfall::base
