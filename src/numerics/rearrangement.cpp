#include "numerics/rearrangement.h"

#include "base/require.h"
#include "numerics/random.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace keenfall::numerics {

namespace {

// Sums of `size` scores, seen from the sum expected by chance.
struct Scores {
  std::vector<double> values;
  std::size_t size = 0;
  double expected = 0;
  double far = 0;  // how far from it counts as at least as far

  [[nodiscard]] bool is_far(double sum) const { return std::abs(sum - expected) >= far; }
};

Scores scores_of(std::vector<double> values, std::size_t first_count) {
  const double total = std::accumulate(values.begin(), values.end(), 0.0);
  Scores scores{.size = std::min(first_count, values.size() - first_count)};
  const double first_sum = std::accumulate(
      values.begin(), values.begin() + static_cast<std::ptrdiff_t>(first_count), 0.0);
  const double sum = scores.size == first_count ? first_sum : total - first_sum;
  scores.expected = total * static_cast<double>(scores.size) / static_cast<double>(values.size());
  double largest = 0;
  for (const double value : values) largest = std::max(largest, std::abs(value));
  // Sums that differ by rounding only are the same distance away.
  const double rounding = 1e-10 * largest * static_cast<double>(values.size());
  scores.far = std::abs(sum - scores.expected) - rounding;
  scores.values = std::move(values);
  return scores;
}

// Goes through all choices of scores.size positions in lexicographic order.
double share_of_all(const Scores& scores) {
  const std::size_t n = scores.values.size();
  const std::size_t k = scores.size;
  std::vector<std::size_t> chosen(k);
  std::iota(chosen.begin(), chosen.end(), 0);
  double count = 0;
  double far = 0;
  while (true) {
    double sum = 0;
    for (const std::size_t i : chosen) sum += scores.values[i];
    ++count;
    if (scores.is_far(sum)) ++far;
    std::size_t moved = k;
    while (moved > 0 && chosen[moved - 1] == n - k + moved - 1) --moved;
    if (moved == 0) return far / count;
    ++chosen[moved - 1];
    for (std::size_t i = moved; i < k; ++i) chosen[i] = chosen[i - 1] + 1;
  }
}

// The arrangement that was seen is counted in, so that p is never zero (Davison & Hinkley 1997,
// Bootstrap Methods and their Application, section 4.2).
double share_of_random(Scores& scores, const Rearranging& how) {
  RandomStream random(how.seed, 0);
  double far = 1;
  for (int i = 0; i < how.random_count; ++i) {
    double sum = 0;
    for (std::size_t j = 0; j < scores.size; ++j) {
      std::swap(scores.values[j], scores.values[j + random.below(scores.values.size() - j)]);
      sum += scores.values[j];
    }
    if (scores.is_far(sum)) ++far;
  }
  return far / (how.random_count + 1.0);
}

RearrangementTest rearranged(Scores scores, const Rearranging& how) {
  base::require(scores.size > 0, "both groups need at least one value");
  const std::size_t n = scores.values.size();
  const double arrangements = combinations(n, scores.size);
  RearrangementTest test{.exact = arrangements <= how.most_counted,
                         .smallest_possible_p = (2 * scores.size == n ? 2 : 1) / arrangements};
  if (test.exact) {
    test.p_two_sided = share_of_all(scores);
    return test;
  }
  test.p_two_sided = share_of_random(scores, how);
  test.monte_carlo_error = std::sqrt(test.p_two_sided * (1 - test.p_two_sided) / how.random_count);
  return test;
}

std::vector<double> joined(std::span<const double> first, std::span<const double> second) {
  std::vector<double> all(first.begin(), first.end());
  all.insert(all.end(), second.begin(), second.end());
  return all;
}

}  // namespace

RearrangementTest rearrange_means(std::span<const double> first,
                                  std::span<const double> second,
                                  const Rearranging& how) {
  return rearranged(scores_of(joined(first, second), first.size()), how);
}

RearrangementTest rearrange_ranks(std::span<const double> first,
                                  std::span<const double> second,
                                  const Rearranging& how) {
  return rearranged(scores_of(mid_ranks(joined(first, second)), first.size()), how);
}

std::vector<double> mid_ranks(std::span<const double> values) {
  std::vector<std::size_t> order(values.size());
  std::iota(order.begin(), order.end(), 0);
  std::ranges::sort(order, {}, [&](std::size_t i) { return values[i]; });
  std::vector<double> ranks(values.size());
  for (std::size_t first = 0; first < order.size();) {
    std::size_t end = first + 1;
    while (end < order.size() && values[order[end]] == values[order[first]]) ++end;
    const double shared = 0.5 * static_cast<double>(first + 1 + end);
    for (std::size_t i = first; i < end; ++i) ranks[order[i]] = shared;
    first = end;
  }
  return ranks;
}

double combinations(std::size_t n, std::size_t k) {
  base::require(k <= n, "no more can be chosen than there are");
  double ways = 1;
  for (std::size_t i = 1; i <= std::min(k, n - k); ++i) {
    ways =
        std::round(ways * static_cast<double>(n - std::min(k, n - k) + i) / static_cast<double>(i));
  }
  return ways;
}

}  // namespace keenfall::numerics
