#include "numerics/chain_diagnostics.h"

#include "base/require.h"
#include "numerics/summaries.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace keenfall::numerics {

namespace {

// Half a chain; of an odd number of draws the middle one belongs to no half.
std::size_t half_length(const ChainShape& shape) { return shape.length / 2; }

std::size_t half_count(const ChainShape& shape) { return 2 * shape.chains; }

// Half after half, from chain after chain.
std::vector<double> without_middles(const ChainShape& shape, std::span<const double> draws) {
  const std::size_t half = half_length(shape);
  std::vector<double> halves;
  halves.reserve(half * half_count(shape));
  for (std::size_t c = 0; c < shape.chains; ++c) {
    const std::span<const double> chain = draws.subspan(c * shape.length, shape.length);
    const std::span<const double> first = chain.first(half);
    const std::span<const double> last = chain.last(half);
    halves.insert(halves.end(), first.begin(), first.end());
    halves.insert(halves.end(), last.begin(), last.end());
  }
  return halves;
}

double sum_of_products(std::span<const double> a, std::span<const double> b) {
  return std::transform_reduce(a.begin(), a.end(), b.begin(), 0.0);
}

struct Spread {
  double within = 0;  // W
  double pooled = 0;  // var+ of equation 3
};

// Half chains, each less its mean.
struct Centred {
  std::vector<double> values;  // half after half
  std::size_t length = 0;      // of a half
  Spread spread;
};

Centred centred(std::vector<double> halves, std::size_t length) {
  std::vector<double> means;
  double within = 0;
  for (std::size_t begin = 0; begin < halves.size(); begin += length) {
    const std::span<double> half = std::span(halves).subspan(begin, length);
    const double mean = mean_of(half);
    for (double& value : half) value -= mean;
    means.push_back(mean);
    within += sum_of_products(half, half) / static_cast<double>(length - 1);
  }
  within /= static_cast<double>(means.size());
  const double draws = static_cast<double>(length);
  const double between = draws * variance_of(means);
  return {.values = std::move(halves),
          .length = length,
          .spread = {.within = within, .pooled = (draws - 1) / draws * within + between / draws}};
}

double r_hat_of(const Spread& spread) {
  return spread.within > 0 ? std::sqrt(spread.pooled / spread.within) : HUGE_VAL;
}

// The mean over the halves of the biased autocovariance at one lag (divisor n), as Geyer's method
// assumes.
double mean_autocovariance(const Centred& halves, std::size_t lag) {
  double sum = 0;
  for (std::size_t begin = 0; begin < halves.values.size(); begin += halves.length) {
    const std::span<const double> half = std::span(halves.values).subspan(begin, halves.length);
    const std::size_t pairs = halves.length - lag;
    sum +=
        sum_of_products(half.last(pairs), half.first(pairs)) / static_cast<double>(halves.length);
  }
  return sum / static_cast<double>(halves.values.size() / halves.length);
}

// Geyer's initial monotone sequence on the combined autocorrelation, equations 10-13.
double ess_of(const Centred& halves) {
  const double draws = static_cast<double>(halves.values.size());
  const Spread& spread = halves.spread;
  if (!(spread.pooled > 0)) return draws;
  const auto correlation = [&](std::size_t lag) {
    return 1 - (spread.within - mean_autocovariance(halves, lag)) / spread.pooled;
  };
  double sum_of_pairs = 0;
  double last_even = 0;  // the even term where the sequence ends counts once, if positive
  double previous_pair = HUGE_VAL;
  for (std::size_t lag = 0;; lag += 2) {
    const double even = lag == 0 ? 1 : correlation(lag);
    double pair = even + correlation(lag + 1);
    if (!(pair > 0) || lag + 5 >= halves.length) {
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

// Of whether a draw is at most `cut`.
double ess_of_tail(std::vector<double> halves, std::size_t length, double cut) {
  for (double& draw : halves) draw = draw <= cut ? 1 : 0;
  return ess_of(centred(std::move(halves), length));
}

ChainShape long_enough(const ChainShape& shape) {
  base::require(shape.chains > 0 && shape.length >= 4,
                "chain diagnostics need at least four draws in every chain");
  return shape;
}

}  // namespace

ChainDiagnoser::ChainDiagnoser(const ChainShape& shape)
    : shape_(long_enough(shape)), scores_(half_count(shape) * half_length(shape)) {}

ChainDiagnostics ChainDiagnoser::diagnose(std::span<const double> draws) const {
  base::require(draws.size() == shape_.chains * shape_.length,
                "chain diagnostics need as many draws as their chains have");
  const std::vector<double> halves = without_middles(shape_, draws);
  const Ordered sorted = in_order(halves);
  if (sorted.values.front() == sorted.values.back()) {
    const double all = static_cast<double>(halves.size());
    return {.r_hat = 1, .ess_bulk = all, .ess_tail = all};
  }
  const std::size_t length = half_length(shape_);
  const double median = quantile_of_sorted(sorted.values, 0.5);
  const Centred bulk = centred(scores_.of(sorted), length);
  const Centred folded = centred(scores_.of(distances_from(median, sorted)), length);
  // The tails begin where they do for all draws, those in the middle of a chain too.
  const bool all_in_halves = halves.size() == draws.size();
  const std::vector<double> all = all_in_halves ? sorted.values : in_order(draws).values;
  const auto ess_below = [&](double probability) {
    return ess_of_tail(halves, length, quantile_of_sorted(all, probability));
  };
  return {.r_hat = std::max(r_hat_of(bulk.spread), r_hat_of(folded.spread)),
          .ess_bulk = ess_of(bulk),
          .ess_tail = std::min(ess_below(0.05), ess_below(0.95))};
}

ChainDiagnostics diagnose(std::span<const std::vector<double>> chains) {
  base::require(!chains.empty(), "chain diagnostics need at least one chain");
  const std::size_t length = chains.front().size();
  std::vector<double> draws;
  for (const auto& chain : chains) {
    base::require(chain.size() == length, "chain diagnostics need chains of one length");
    draws.insert(draws.end(), chain.begin(), chain.end());
  }
  const ChainDiagnoser diagnoser({.chains = chains.size(), .length = length});
  return diagnoser.diagnose(draws);
}

}  // namespace keenfall::numerics
