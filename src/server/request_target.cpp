#include "server/request_target.h"

#include <algorithm>
#include <charconv>
#include <cstddef>
#include <cstdint>

namespace keenfall::server {

namespace {

std::optional<char> byte_written_as(std::string_view two_digits) {
  constexpr int kHexadecimal = 16;
  unsigned number = 0;
  const char* end = two_digits.data() + two_digits.size();
  const auto [at, fault] = std::from_chars(two_digits.data(), end, number, kHexadecimal);
  if (two_digits.size() != 2 || fault != std::errc() || at != end) return std::nullopt;
  return static_cast<char>(number);
}

std::optional<std::string> decoded(std::string_view written, bool plus_is_space) {
  std::string text;
  for (std::size_t i = 0; i < written.size(); ++i) {
    if (written[i] == '%') {
      const auto byte = byte_written_as(written.substr(i + 1, 2));
      if (!byte) return std::nullopt;
      text += *byte;
      i += 2;
    } else {
      text += plus_is_space && written[i] == '+' ? ' ' : written[i];
    }
  }
  return text;
}

// How many bytes a character has that begins with this one; 0 where none does.
std::size_t length_begun_by(std::uint8_t lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead <= 0xDF) return 2;
  if (lead >= 0xE0 && lead <= 0xEF) return 3;
  if (lead >= 0xF0 && lead <= 0xF4) return 4;
  return 0;
}

// The first byte after the lead is narrower for some leads (Unicode, table 3-7).
bool may_follow(std::uint8_t lead, std::uint8_t second) {
  if (lead == 0xE0) return second >= 0xA0 && second <= 0xBF;
  if (lead == 0xED) return second >= 0x80 && second <= 0x9F;
  if (lead == 0xF0) return second >= 0x90 && second <= 0xBF;
  if (lead == 0xF4) return second >= 0x80 && second <= 0x8F;
  return second >= 0x80 && second <= 0xBF;
}

bool is_utf8(std::string_view text) {
  const auto byte = [text](std::size_t i) { return static_cast<std::uint8_t>(text[i]); };
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = length_begun_by(byte(i));
    if (length == 0 || i + length > text.size()) return false;
    if (length > 1 && !may_follow(byte(i), byte(i + 1))) return false;
    for (std::size_t k = 2; k < length; ++k) {
      if ((byte(i + k) & 0xC0) != 0x80) return false;
    }
    i += length;
  }
  return true;
}

bool has_control(std::string_view text) {
  return std::ranges::any_of(text, [](char c) {
    const auto byte = static_cast<std::uint8_t>(c);
    return byte < 0x20 || byte == 0x7F;
  });
}

std::optional<std::string> clean_part(std::string_view written) {
  auto part = decoded(written, false);
  if (!part || !is_utf8(*part) || has_control(*part)) return std::nullopt;
  if (part->find_first_of("/\\") != std::string::npos) return std::nullopt;
  if (*part == "." || *part == "..") return std::nullopt;
  return part;
}

std::optional<std::string> clean_path(std::string_view written) {
  if (!written.starts_with('/')) return std::nullopt;
  std::string path;
  const auto parts = parts_of_path(written);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const auto part = clean_part(parts[i]);
    const bool is_last = i + 1 == parts.size();
    if (!part || (part->empty() && !is_last)) return std::nullopt;
    path += "/" + *part;
  }
  return path.empty() ? "/" : path;
}

std::optional<std::vector<NamedText>> clean_query(std::string_view written) {
  std::vector<NamedText> query;
  while (!written.empty()) {
    const std::size_t end = std::min(written.find('&'), written.size());
    const std::string_view pair = written.substr(0, end);
    const std::size_t equals = std::min(pair.find('='), pair.size());
    const auto name = decoded(pair.substr(0, equals), true);
    const auto text = decoded(pair.substr(std::min(equals + 1, pair.size())), true);
    if (!name || !text || !is_utf8(*name) || !is_utf8(*text)) return std::nullopt;
    if (has_control(*name) || has_control(*text)) return std::nullopt;
    if (!pair.empty()) query.push_back({.name = *name, .text = *text});
    written.remove_prefix(std::min(end + 1, written.size()));
  }
  return query;
}

}  // namespace

std::vector<std::string_view> parts_of_path(std::string_view path) {
  std::vector<std::string_view> parts;
  if (path.starts_with('/')) path.remove_prefix(1);
  if (path.empty()) return parts;
  for (;;) {
    const std::size_t slash = path.find('/');
    parts.push_back(path.substr(0, slash));
    if (slash == std::string_view::npos) return parts;
    path.remove_prefix(slash + 1);
  }
}

std::optional<RequestTarget> request_target(std::string_view written) {
  if (written.find('#') != std::string_view::npos) return std::nullopt;
  const std::size_t mark = std::min(written.find('?'), written.size());
  auto path = clean_path(written.substr(0, mark));
  auto query = clean_query(written.substr(std::min(mark + 1, written.size())));
  if (!path || !query) return std::nullopt;
  return RequestTarget{.path = std::move(*path), .query = std::move(*query)};
}

}  // namespace keenfall::server
