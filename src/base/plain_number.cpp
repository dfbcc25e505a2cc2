#include "base/plain_number.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace keenfall::base {

std::string plain_number(double number) {
  char text[32];
  const auto end = std::to_chars(text, text + sizeof text, number);
  return {text, end.ptr};
}

std::string with_decimals(double number, int decimals) {
  char text[400];  // the longest double has 309 digits before its point
  const auto end =
      std::to_chars(text, text + sizeof text, number, std::chars_format::fixed, decimals);
  return {text, end.ptr};
}

std::string with_figures(double number, int figures) {
  if (number == 0) return "0";
  const double power = std::floor(std::log10(std::abs(number)));
  const double step = std::pow(10, power - figures + 1);
  const int decimals = std::clamp(figures - 1 - static_cast<int>(power), 0, 15);
  return with_decimals(step >= 1 ? std::round(number / step) * step : number, decimals);
}

}  // namespace keenfall::base
