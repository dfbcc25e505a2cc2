#include "cli/log_axis.h"

#include "base/require.h"
#include "telling/rounded.h"

#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <cstddef>
#include <initializer_list>

namespace keenfall::cli {

namespace {

std::vector<double> multiples_within(const LogAxis& axis, std::initializer_list<double> multiples) {
  std::vector<double> ticks;
  const int first = static_cast<int>(std::floor(std::log10(axis.low)));
  const int last = static_cast<int>(std::ceil(std::log10(axis.high)));
  for (int power = first; power <= last; ++power) {
    for (const double multiple : multiples) {
      const double tick = multiple * std::pow(10.0, power);
      if (tick >= axis.low && tick <= axis.high) ticks.push_back(tick);
    }
  }
  return ticks;
}

}  // namespace

int LogAxis::cell_of(double number) const {
  base::require(low > 0 && high > low && cells >= 2, "a log axis runs from above zero upwards");
  if (number <= 0) return -1;
  const double share = std::log(number / low) / std::log(high / low);
  const double cell = std::floor(share * (cells - 1) + 0.5);
  return static_cast<int>(std::clamp(cell, -1.0, static_cast<double>(cells)));
}

std::string tick_text(double tick) {
  constexpr double kMillion = 1e6;
  return tick < kMillion ? fmt::format("{:g}", tick) : telling::cuts_text(tick);
}

std::vector<double> ticks_on(const LogAxis& axis) {
  constexpr std::size_t kFewest = 4;
  std::vector<double> ticks = multiples_within(axis, {1, 2, 5});
  if (ticks.size() < kFewest) ticks = multiples_within(axis, {1, 1.5, 2, 3, 4, 5, 6, 7, 8, 9});
  return ticks;
}

}  // namespace keenfall::cli
