#include "server/file_answer.h"

#include <cstddef>
#include <utility>

namespace keenfall::server {

namespace {

bool is_plain_letter(char letter) {
  return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') ||
         (letter >= '0' && letter <= '9') || letter == '.' || letter == '-' || letter == '_';
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
  HttpResponse answer{.content_type = std::move(file.content_type), .body = std::move(file.bytes)};
  answer.headers.push_back({.name = "Content-Disposition",
                            .text = "attachment; filename=\"" + in_plain_letters(file.name) +
                                    "\"; filename*=UTF-8''" + percent_encoded(file.name)});
  return answer;
}

}  // namespace keenfall::server
