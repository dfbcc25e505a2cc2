#include "scale/line_bytes.h"

#include "scale/line.h"

#include <algorithm>
#include <bit>
#include <optional>

namespace keenfall::scale {

namespace {

constexpr unsigned char kHighBit = 0x80;
constexpr unsigned char kMarksDamage = 0xFF;

unsigned char as_byte(char character) { return static_cast<unsigned char>(character); }

bool is_even(char character) { return std::popcount(as_byte(character)) % 2 == 0; }
bool is_high(char character) { return as_byte(character) >= kHighBit; }
bool marks_damage(char character) { return as_byte(character) == kMarksDamage; }

// Nothing where the high bits are no parity.
std::optional<std::string> without_parity(std::string_view bytes) {
  std::string text(bytes);
  if (std::ranges::none_of(text, is_high)) return text;
  const auto evens = static_cast<std::size_t>(std::ranges::count_if(text, is_even));
  const bool is_parity = evens == 0 || evens == text.size() || std::ranges::all_of(text, is_high);
  if (!is_parity || std::ranges::any_of(text, marks_damage)) return std::nullopt;
  for (char& byte : text) byte = static_cast<char>(as_byte(byte) & 0x7F);
  return text;
}

bool is_control_byte(char byte) { return (byte >= 0 && byte < ' ') || byte == 0x7F; }

std::string_view without_controls_around(std::string_view text) {
  while (!text.empty() && (is_control_byte(text.back()) || text.back() == ' ')) {
    text.remove_suffix(1);
  }
  while (!text.empty() && is_control_byte(text.front())) text.remove_prefix(1);
  return text;
}

base::Problem not_text() {
  return {.kind = base::ProblemKind::unreadable,
          .sentence = "the line holds bytes that are no text",
          .accepted = "the speed and the data format (8N1, 7E1) that the scale is set to"};
}

}  // namespace

base::Result<std::string> text_of_bytes(std::string_view bytes) {
  if (bytes.size() > kLongestLine) {
    return base::failed({.kind = base::ProblemKind::too_large,
                         .sentence = "the line is longer than any that a scale sends",
                         .accepted = "at most " + std::to_string(kLongestLine) + " characters"});
  }
  const auto clean = without_parity(bytes);
  if (!clean) return base::failed(not_text());
  std::string text(without_controls_around(*clean));
  std::ranges::replace(text, '\t', ' ');
  if (std::ranges::any_of(text, is_control_byte)) return base::failed(not_text());
  return text;
}

}  // namespace keenfall::scale
