#include "server/file_answer.h"

#include <cstddef>
#include <utility>

namespace keenfall::server {

namespace {

bool is_plain_letter(char letter) {
  return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') ||
         (letter >= '0' && letter <= '9') || letter == '.' || letter == '-' || letter == '_';
}

// What every file system takes, with something to add to it. In whole characters of UTF-8, and with
// the ending by which it is opened.
std::string shortened(const std::string& name) {
  constexpr std::size_t kMostBytes = 150;
  constexpr std::size_t kLongestEnding = 10;
  if (name.size() <= kMostBytes) return name;
  const std::size_t dot = name.rfind('.');
  const bool has_ending = dot != std::string::npos && name.size() - dot <= kLongestEnding;
  const std::string ending = has_ending ? name.substr(dot) : std::string();
  const auto is_within_a_character = [&](std::size_t at) {
    constexpr unsigned kMark = 0xC0;
    constexpr unsigned kContinued = 0x80;
    return (static_cast<unsigned char>(name[at]) & kMark) == kContinued;
  };
  std::size_t length = kMostBytes - ending.size();
  while (length > 0 && is_within_a_character(length)) --length;
  return name.substr(0, length) + ending;
}

// For those who read no more than ASCII.
std::string in_plain_letters(const std::string& name) {
  std::string plain;
  for (const char letter : name) plain += is_plain_letter(letter) ? letter : '_';
  return plain;
}

// RFC 8187: bytes of UTF-8, each as it is or as "%" and two digits.
std::string percent_encoded(const std::string& name) {
  constexpr const char* kDigits = "0123456789ABCDEF";
  std::string encoded;
  for (const char letter : name) {
    const auto byte = static_cast<unsigned char>(letter);
    if (is_plain_letter(letter)) {
      encoded += letter;
    } else {
      encoded += {'%', kDigits[byte / 16], kDigits[byte % 16]};
    }
  }
  return encoded;
}

}  // namespace

HttpResponse file_answer(MadeFile file) {
  const std::string name = shortened(file.name);
  HttpResponse answer{.content_type = std::move(file.content_type), .body = std::move(file.bytes)};
  answer.headers.push_back({.name = "Content-Disposition",
                            .text = "attachment; filename=\"" + in_plain_letters(name) +
                                    "\"; filename*=UTF-8''" + percent_encoded(name)});
  return answer;
}

}  // namespace keenfall::server
