#include "numerics/summaries.h"

#include "base/require.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace keenfall::numerics {

double mean_of(std::span<const double> values) {
  base::require(!values.empty(), "a mean needs at least one value");
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

double variance_of(std::span<const double> values) {
  base::require(values.size() >= 2, "a variance needs at least two values");
  const double mean = mean_of(values);
  double sum = 0;
  for (const double v : values) sum += (v - mean) * (v - mean);
  return sum / static_cast<double>(values.size() - 1);
}

double quantile_of_sorted(std::span<const double> sorted, double probability) {
  base::require(!sorted.empty(), "a quantile needs at least one value");
  base::require(probability >= 0 && probability <= 1, "a probability lies between 0 and 1");
  const double position = probability * static_cast<double>(sorted.size() - 1);
  const auto below = static_cast<std::size_t>(std::floor(position));
  const std::size_t above = std::min(below + 1, sorted.size() - 1);
  const double weight = position - static_cast<double>(below);
  return sorted[below] + weight * (sorted[above] - sorted[below]);
}

double median_of(std::vector<double> values) {
  base::require(!values.empty(), "a median needs at least one value");
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>((values.size() - 1) / 2);
  std::nth_element(values.begin(), middle, values.end());
  if (values.size() % 2 == 0) std::nth_element(middle + 1, middle + 1, values.end());
  return quantile_of_sorted(values, 0.5);
}

Interval interval_of(std::vector<double> draws) {
  base::require(!draws.empty(), "an interval needs at least one draw");
  // Only the places that the quantiles are read from are put in order, from the middle outwards.
  const double last = static_cast<double>(draws.size() - 1);
  const auto place_of = [last](double probability) {
    return static_cast<std::ptrdiff_t>(std::floor(probability * last));
  };
  const auto put = [&](std::ptrdiff_t begin, std::ptrdiff_t place, std::ptrdiff_t end) {
    const auto wanted = draws.begin() + place;
    const auto beyond = draws.begin() + end;
    if (place >= begin) std::nth_element(draws.begin() + begin, wanted, beyond);
    if (wanted + 1 < beyond) std::iter_swap(wanted + 1, std::min_element(wanted + 1, beyond));
  };
  const auto size = static_cast<std::ptrdiff_t>(draws.size());
  put(0, place_of(0.5), size);
  put(0, place_of(0.05), place_of(0.5));
  put(0, place_of(0.025), place_of(0.05));
  put(place_of(0.5) + 2, place_of(0.95), size);
  put(place_of(0.95) + 2, place_of(0.975), size);
  return {.median = quantile_of_sorted(draws, 0.5),
          .lo90 = quantile_of_sorted(draws, 0.05),
          .hi90 = quantile_of_sorted(draws, 0.95),
          .lo95 = quantile_of_sorted(draws, 0.025),
          .hi95 = quantile_of_sorted(draws, 0.975)};
}

Interval exp_of(const Interval& log_interval) {
  return {.median = std::exp(log_interval.median),
          .lo90 = std::exp(log_interval.lo90),
          .hi90 = std::exp(log_interval.hi90),
          .lo95 = std::exp(log_interval.lo95),
          .hi95 = std::exp(log_interval.hi95)};
}

}  // namespace keenfall::numerics
