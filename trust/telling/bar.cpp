#include "trust/telling/bar.h"

#include "base/plain_number.h"
#include "base/require.h"

#include <algorithm>
#include <cmath>

namespace keenfall::trust {

Estimate share(double of_these, double all) {
  base::require(all > 0 && of_these >= 0 && of_these <= all, "a share of some trials");
  const double value = of_these / all;
  return {.value = value, .error = std::sqrt(value * (1 - value) / all)};
}

Estimate mean_ratio(double sum_of_logs, double sum_of_squares, double count) {
  base::require(count >= 2, "a mean with an error needs two");
  const double mean = sum_of_logs / count;
  const double variance = std::max(0.0, (sum_of_squares - count * mean * mean) / (count - 1));
  return {.value = std::exp(mean), .error = std::exp(mean) * std::sqrt(variance / count)};
}

bool is_missed(const Estimate& measured, const Bar& bar) {
  constexpr double kErrors = 2.6;
  const double beyond =
      bar.side == Side::at_least ? bar.limit - measured.value : measured.value - bar.limit;
  return beyond > kErrors * measured.error;
}

std::string percent(const Estimate& measured) {
  return base::with_decimals(100 * measured.value, 1) + " ± " +
         base::with_decimals(100 * measured.error, 1) + " %";
}

std::string ratio(const Estimate& measured) {
  return base::with_decimals(measured.value, 3) + " ± " + base::with_decimals(measured.error, 3);
}

std::string percent_against(const Estimate& measured, const Bar& bar) {
  return percent(measured) + (is_missed(measured, bar) ? " **missed**" : "");
}

}  // namespace keenfall::trust
