#include "numerics/chain_diagnostics.h"

#include "base/require.h"
#include "numerics/summaries.h"

#include <boost/math/special_functions/erf.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace keenfall::numerics {

namespace {

using Chains = std::vector<std::vector<double>>;

Chains split_in_halves(std::span<const std::vector<double>> chains) {
  Chains halves;
  for (const auto& chain : chains) {
    const auto half = static_cast<std::ptrdiff_t>(chain.size() / 2);
    halves.push_back({chain.begin(), chain.begin() + half});
    halves.push_back({chain.end() - half, chain.end()});
  }
  return halves;
}

// Doubles are exact enough here; long doubles take twice as long.
using PlainDouble = boost::math::policies::policy<boost::math::policies::promote_double<false>>;

// Ranks over all chains (ties share their mean rank) turned into normal scores, equation 14:
// z = Phi^-1((rank - 3/8) / (S + 1/4)).
Chains normal_scores(const Chains& chains) {
  std::vector<double> pooled;
  for (const auto& chain : chains) pooled.insert(pooled.end(), chain.begin(), chain.end());
  std::ranges::sort(pooled);
  const double total = static_cast<double>(pooled.size());
  Chains scores = chains;
  for (auto& chain : scores) {
    for (double& draw : chain) {
      const auto first = std::ranges::lower_bound(pooled, draw) - pooled.begin();
      const auto after = std::ranges::upper_bound(pooled.begin() + first, pooled.end(), draw);
      const auto last = after - pooled.begin();
      const double rank = 0.5 * static_cast<double>(first + 1 + last);
      const double probability = (rank - 0.375) / (total + 0.25);
      draw = std::numbers::sqrt2 * boost::math::erf_inv(2 * probability - 1, PlainDouble());
    }
  }
  return scores;
}

Chains distances_from_median(const Chains& chains) {
  std::vector<double> pooled;
  for (const auto& chain : chains) pooled.insert(pooled.end(), chain.begin(), chain.end());
  const double median = median_of(std::move(pooled));
  Chains folded = chains;
  for (auto& chain : folded) {
    for (double& draw : chain) draw = std::abs(draw - median);
  }
  return folded;
}

bool never_moves(const Chains& chains) {
  const double first = chains.front().front();
  return std::ranges::all_of(chains, [first](const std::vector<double>& chain) {
    return std::ranges::all_of(chain, [first](double draw) { return draw == first; });
  });
}

struct Spread {
  double within = 0;  // W
  double pooled = 0;  // var+ of equation 3
};

Spread spread_of(const Chains& chains) {
  const double length = static_cast<double>(chains.front().size());
  std::vector<double> means;
  double within = 0;
  for (const auto& chain : chains) {
    means.push_back(mean_of(chain));
    within += variance_of(chain);
  }
  within /= static_cast<double>(chains.size());
  const double between = chains.size() > 1 ? length * variance_of(means) : 0;
  return {.within = within, .pooled = (length - 1) / length * within + between / length};
}

double r_hat_of(const Chains& chains) {
  const Spread spread = spread_of(chains);
  return spread.within > 0 ? std::sqrt(spread.pooled / spread.within) : HUGE_VAL;
}

// Biased autocovariance at one lag (divisor n), as Geyer's method assumes.
double autocovariance(const std::vector<double>& chain, double mean, std::size_t lag) {
  double sum = 0;
  for (std::size_t i = lag; i < chain.size(); ++i) {
    sum += (chain[i] - mean) * (chain[i - lag] - mean);
  }
  return sum / static_cast<double>(chain.size());
}

// Geyer's initial monotone sequence on the combined autocorrelation, equations 10-13.
double ess_of(const Chains& chains) {
  const std::size_t length = chains.front().size();
  const double draws = static_cast<double>(length * chains.size());
  const Spread spread = spread_of(chains);
  if (!(spread.pooled > 0)) return draws;
  std::vector<double> means;
  for (const auto& chain : chains) means.push_back(mean_of(chain));
  const auto correlation = [&](std::size_t lag) {
    double sum = 0;
    for (std::size_t c = 0; c < chains.size(); ++c) sum += autocovariance(chains[c], means[c], lag);
    const double mean_covariance = sum / static_cast<double>(chains.size());
    return 1 - (spread.within - mean_covariance) / spread.pooled;
  };
  double sum_of_pairs = 0;
  double last_even = 0;  // the even term where the sequence ends counts once, if positive
  double previous_pair = HUGE_VAL;
  for (std::size_t lag = 0;; lag += 2) {
    const double even = lag == 0 ? 1 : correlation(lag);
    double pair = even + correlation(lag + 1);
    if (!(pair > 0) || lag + 5 >= length) {
      last_even = std::max(0.0, even);
      break;
    }
    pair = std::min(pair, previous_pair);
    previous_pair = pair;
    sum_of_pairs += pair;
  }
  const double tau = std::max(-1 + 2 * sum_of_pairs + last_even, 1 / std::log10(draws));
  return draws / tau;
}

// `chains` unsplit: the quantile is taken over all draws, then the indicators are split.
double ess_of_tail(std::span<const std::vector<double>> chains, double probability) {
  std::vector<double> pooled;
  for (const auto& chain : chains) pooled.insert(pooled.end(), chain.begin(), chain.end());
  std::ranges::sort(pooled);
  const double cut = quantile_of_sorted(pooled, probability);
  Chains below(chains.begin(), chains.end());
  for (auto& chain : below) {
    for (double& draw : chain) draw = draw <= cut ? 1 : 0;
  }
  return ess_of(split_in_halves(below));
}

}  // namespace

ChainDiagnostics diagnose(std::span<const std::vector<double>> chains) {
  base::require(!chains.empty() && chains.front().size() >= 4,
                "chain diagnostics need at least four draws in every chain");
  const Chains halves = split_in_halves(chains);
  if (never_moves(halves)) {
    const double draws = static_cast<double>(halves.size() * halves.front().size());
    return {.r_hat = 1, .ess_bulk = draws, .ess_tail = draws};
  }
  const Chains scores = normal_scores(halves);
  const Chains folded_scores = normal_scores(distances_from_median(halves));
  return {.r_hat = std::max(r_hat_of(scores), r_hat_of(folded_scores)),
          .ess_bulk = ess_of(scores),
          .ess_tail = std::min(ess_of_tail(chains, 0.05), ess_of_tail(chains, 0.95))};
}

}  // namespace keenfall::numerics
