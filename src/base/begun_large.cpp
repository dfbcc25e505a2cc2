#include "base/begun_large.h"

#include <cctype>

namespace keenfall::base {

std::string begun_large(std::string words) {
  if (!words.empty()) {
    words.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(words.front())));
  }
  return words;
}

}  // namespace keenfall::base
