#include "base/unseen_character.h"

namespace keenfall::base {

std::size_t bytes_of_character(std::string_view text, std::size_t at) {
  std::size_t end = at + 1;
  while (end < text.size() && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) ++end;
  return end - at;
}

bool is_control(std::string_view character) {
  if (character.empty()) return false;
  const auto first = static_cast<unsigned char>(character.front());
  if (character.size() == 1) return first < 0x20U || first == 0x7FU;
  return character.size() == 2 && first == 0xC2U &&
         static_cast<unsigned char>(character[1]) < 0xA0U;
}

bool turns_direction(std::string_view character) {
  if (character == "\xD8\x9C") return true;
  if (character.size() != 3 || !character.starts_with("\xE2")) return false;
  const auto second = static_cast<unsigned char>(character[1]);
  const auto third = static_cast<unsigned char>(character[2]);
  if (second == 0x80U)
    return third == 0x8EU || third == 0x8FU || (third >= 0xAAU && third <= 0xAEU);
  return second == 0x81U && third >= 0xA6U && third <= 0xA9U;
}

}  // namespace keenfall::base
