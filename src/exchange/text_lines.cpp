#include "exchange/text_lines.h"

#include <algorithm>

namespace keenfall::exchange {

namespace {

constexpr std::size_t kExcerptCharacters = 60;

constexpr std::string_view kBlanks[] = {" ", "\t", "\r", "\n", "\xC2\xA0", "\xE2\x80\xAF"};

bool starts_character(char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }

}  // namespace

std::size_t line_at(std::string_view text, std::size_t offset) {
  std::size_t line = 1;
  for (std::size_t i = 0; i < std::min(offset, text.size()); ++i) {
    const bool is_pair = text[i] == '\r' && i + 1 < text.size() && text[i + 1] == '\n';
    if (text[i] == '\n' || (text[i] == '\r' && !is_pair)) ++line;
  }
  return line;
}

std::string_view trimmed(std::string_view text) {
  const auto is_plain = [](char c) {
    return static_cast<unsigned char>(c) > 0x20U && static_cast<unsigned char>(c) < 0x80U;
  };
  bool changed = true;
  while (changed && !text.empty() && !(is_plain(text.front()) && is_plain(text.back()))) {
    changed = false;
    for (const std::string_view blank : kBlanks) {
      if (text.starts_with(blank)) {
        text.remove_prefix(blank.size());
        changed = true;
      }
      if (text.ends_with(blank)) {
        text.remove_suffix(blank.size());
        changed = true;
      }
    }
  }
  return text;
}

std::string folded(std::string_view text) {
  std::string letters;
  for (const char c : trimmed(text)) {
    if (c == ' ' || c == '-' || c == '_') continue;
    letters += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  return letters;
}

std::size_t character_count(std::string_view text) {
  return static_cast<std::size_t>(std::ranges::count_if(text, starts_character));
}

std::string excerpt(std::string_view text) {
  std::string words;
  std::size_t characters = 0;
  for (const char c : text) {
    if (starts_character(c) && ++characters > kExcerptCharacters) return words + "…";
    words += c == '\n' || c == '\r' || c == '\t' ? ' ' : c;
  }
  return words;
}

std::string in_quotes(std::string_view text) { return "“" + excerpt(text) + "”"; }

}  // namespace keenfall::exchange
