#include "base/plain_number.h"

#include <charconv>

namespace keenfall::base {

std::string plain_number(double number) {
  char text[32];
  const auto end = std::to_chars(text, text + sizeof text, number);
  return {text, end.ptr};
}

}  // namespace keenfall::base
