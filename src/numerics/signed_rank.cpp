#include "numerics/signed_rank.h"

#include "base/require.h"
#include "numerics/rearrangement.h"
#include "numerics/summaries.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace keenfall::numerics {

namespace {

// chances[s]: the probability that the doubled ranks of the positive differences add up to s, when
// each sign is a coin's.
std::vector<double> chances_of_sums(const std::vector<std::size_t>& doubled_ranks) {
  std::size_t total = 0;
  for (const std::size_t rank : doubled_ranks) total += rank;
  std::vector<double> chances(total + 1);
  chances[0] = 1;
  std::size_t reached = 0;
  for (const std::size_t rank : doubled_ranks) {
    reached += rank;
    for (std::size_t s = reached + 1; s-- > 0;) {
      chances[s] = 0.5 * (chances[s] + (s >= rank ? chances[s - rank] : 0));
    }
  }
  return chances;
}

// The number of pairs (first, second) with first above second has this distribution by chance:
// the counts of Mann & Whitney 1947 (Ann. Math. Stat. 18, 50-60), as probabilities.
std::vector<double> chances_of_pairs_above(std::size_t m, std::size_t n) {
  // The generating function, the product of (1 - q^(n+i)) / (1 - q^i) for i = 1..m.
  std::vector<double> counts(m * n + 1);
  counts[0] = 1;
  for (std::size_t i = 1; i <= m; ++i) {
    for (std::size_t s = counts.size(); s-- > n + i;) counts[s] -= counts[s - n - i];
    for (std::size_t s = i; s < counts.size(); ++s) counts[s] += counts[s - i];
  }
  const double all = combinations(m + n, m);
  for (double& count : counts) count /= all;
  return counts;
}

// The smallest number of pairs whose chance of being reached or undercut is at least `tail`.
std::size_t quantile_of(const std::vector<double>& chances, double tail) {
  double below = 0;
  for (std::size_t s = 0; s < chances.size(); ++s) {
    below += chances[s];
    if (below >= tail) return s;
  }
  return chances.size() - 1;
}

}  // namespace

SignedRankTest signed_rank_test(std::span<const double> differences) {
  std::vector<double> sizes;
  std::vector<bool> positive;
  for (const double difference : differences) {
    if (difference == 0) continue;
    sizes.push_back(std::abs(difference));
    positive.push_back(difference > 0);
  }
  constexpr std::size_t kMost = 200;  // the sums of ranks then need some 40,000 places
  base::require(sizes.size() <= kMost, "signed ranks are counted for at most 200 differences");
  SignedRankTest test{.differences = sizes.size()};
  if (sizes.empty()) return test;
  const std::vector<double> ranks = mid_ranks(sizes);
  std::vector<std::size_t> doubled;
  std::size_t observed = 0;
  for (std::size_t i = 0; i < ranks.size(); ++i) {
    doubled.push_back(static_cast<std::size_t>(std::lround(2 * ranks[i])));
    if (positive[i]) observed += doubled.back();
  }
  const std::vector<double> chances = chances_of_sums(doubled);
  double at_most = 0;
  double at_least = 0;
  for (std::size_t s = 0; s < chances.size(); ++s) {
    if (s <= observed) at_most += chances[s];
    if (s >= observed) at_least += chances[s];
  }
  test.rank_sum = 0.5 * static_cast<double>(observed);
  test.p_greater = at_least;
  test.p_two_sided = std::min(1.0, 2 * std::min(at_most, at_least));
  test.smallest_possible_p = std::ldexp(2.0, -static_cast<int>(sizes.size()));
  return test;
}

Shift hodges_lehmann_shift(std::span<const double> first, std::span<const double> second) {
  base::require(!first.empty() && !second.empty(), "both groups need at least one value");
  std::vector<double> differences;
  differences.reserve(first.size() * second.size());
  for (const double a : first) {
    for (const double b : second) differences.push_back(a - b);
  }
  std::ranges::sort(differences);
  constexpr double kTail = 0.025;
  const std::size_t cut = std::max<std::size_t>(
      1, quantile_of(chances_of_pairs_above(first.size(), second.size()), kTail));
  return {.estimate = quantile_of_sorted(differences, 0.5),
          .lo95 = differences[cut - 1],
          .hi95 = differences[differences.size() - cut]};
}

}  // namespace keenfall::numerics
