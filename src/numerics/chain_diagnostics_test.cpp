#include "numerics/chain_diagnostics.h"

#include "numerics/random.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <stdexcept>
#include <string>
#include <vector>

namespace keenfall::numerics {
namespace {

// Autoregressive chains with correlation rho; the limit of draws / ESS is (1 + rho) / (1 - rho).
std::vector<std::vector<double>> autoregressive(double rho, double shift_of_last, int length) {
  std::vector<std::vector<double>> chains;
  for (std::uint64_t c = 0; c < 4; ++c) {
    RandomStream random({5}, c);
    double state = random.normal();
    std::vector<double> chain;
    for (int i = 0; i < length; ++i) {
      state = rho * state + std::sqrt(1 - rho * rho) * random.normal();
      chain.push_back(state + (c == 3 ? shift_of_last : 0));
    }
    chains.push_back(chain);
  }
  return chains;
}

TEST(ChainDiagnostics, CountCorrelatedDrawsForWhatTheyAreWorth) {
  const ChainDiagnostics found = diagnose(autoregressive(0.6, 0, 5000));

  EXPECT_NEAR(found.ess_bulk, 20000 * 0.4 / 1.6, 700);
  EXPECT_LT(found.r_hat, 1.01);
}

TEST(ChainDiagnostics, SeeAChainThatStandsApart) {
  EXPECT_GT(diagnose(autoregressive(0.2, 1, 1000)).r_hat, 1.05);
}

std::vector<std::vector<double>> waves(int length, double slow, double shift_of_last) {
  std::vector<std::vector<double>> chains;
  for (int c = 1; c <= 4; ++c) {
    std::vector<double> chain;
    for (int i = 1; i <= length; ++i) {
      chain.push_back(std::sin(0.7 * i * c) + slow * std::sin(0.05 * i + c) +
                      0.1 * c * std::cos(static_cast<double>(i) * i * 0.013) +
                      (c == 4 ? shift_of_last : 0));
    }
    chains.push_back(chain);
  }
  return chains;
}

// R package posterior (tests/reference/chain_diagnostics.R).
TEST(ChainDiagnostics, AgreeWithTheReferencePackageInR) {
  const auto expect = [](const ChainDiagnostics& found, double r_hat, double bulk, double tail) {
    EXPECT_NEAR(found.r_hat, r_hat, 1e-9);
    EXPECT_NEAR(found.ess_bulk, bulk, 1e-6 * bulk);
    EXPECT_NEAR(found.ess_tail, tail, 1e-6 * tail);
  };
  expect(diagnose(waves(200, 0.3, 0)), 0.998517243870, 820.195279941828, 566.866402554428);
  expect(diagnose(waves(1000, 2, 0)), 0.999054236564, 144.763118084732, 1133.325214754241);
  expect(diagnose(waves(501, 1, 0.4)), 1.017138696105, 117.262321144251, 432.346675636329);
}

// The same by its definitions, slowly and without any code in common: ranks by counting, quantiles
// of the normal by halving intervals, every sum over all lags.
namespace by_definition {

using Chains = std::vector<std::vector<double>>;

double normal_quantile(double probability) {
  double low = -10;
  double high = 10;
  for (int i = 0; i < 100; ++i) {
    const double middle = 0.5 * (low + high);
    (0.5 * std::erfc(-middle / std::sqrt(2)) < probability ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

std::vector<double> pooled_and_sorted(const Chains& chains) {
  std::vector<double> pooled;
  for (const auto& chain : chains) pooled.insert(pooled.end(), chain.begin(), chain.end());
  std::ranges::sort(pooled);
  return pooled;
}

double quantile(const Chains& chains, double probability) {
  const std::vector<double> sorted = pooled_and_sorted(chains);
  const double position = probability * static_cast<double>(sorted.size() - 1);
  const auto below = static_cast<std::size_t>(position);
  const double share = position - static_cast<double>(below);
  return share > 0 ? (1 - share) * sorted[below] + share * sorted[below + 1] : sorted[below];
}

template <typename Change>
Chains changed(Chains chains, const Change& change) {
  for (auto& chain : chains) {
    for (double& draw : chain) draw = change(draw);
  }
  return chains;
}

Chains halves_of(const Chains& chains) {
  Chains halves;
  for (const auto& chain : chains) {
    const std::size_t half = chain.size() / 2;
    std::vector<double> first;
    std::vector<double> last;
    for (std::size_t i = 0; i < half; ++i) {
      first.push_back(chain[i]);
      last.push_back(chain[chain.size() - half + i]);
    }
    halves.push_back(first);
    halves.push_back(last);
  }
  return halves;
}

Chains normal_scores(const Chains& chains) {
  const std::vector<double> all = pooled_and_sorted(chains);
  return changed(chains, [&](double draw) {
    const auto less = std::ranges::count_if(all, [&](double other) { return other < draw; });
    const auto same = std::ranges::count(all, draw);
    const double rank = static_cast<double>(less) + (static_cast<double>(same) + 1) / 2;
    return normal_quantile((rank - 0.375) / (static_cast<double>(all.size()) + 0.25));
  });
}

double mean(const std::vector<double>& values) {
  double sum = 0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

double covariance(const std::vector<double>& chain, std::size_t lag, double divisor) {
  double sum = 0;
  for (std::size_t i = lag; i < chain.size(); ++i) {
    sum += (chain[i] - mean(chain)) * (chain[i - lag] - mean(chain));
  }
  return sum / divisor;
}

struct Variances {
  double within = 0;
  double pooled = 0;
};

Variances variances(const Chains& chains) {
  const double length = static_cast<double>(chains[0].size());
  std::vector<double> means;
  std::vector<double> each;
  for (const auto& chain : chains) {
    means.push_back(mean(chain));
    each.push_back(covariance(chain, 0, length - 1));
  }
  const double between = covariance(means, 0, static_cast<double>(chains.size()) - 1);
  return {.within = mean(each), .pooled = mean(each) * (length - 1) / length + between};
}

double r_hat(const Chains& chains) {
  return std::sqrt(variances(chains).pooled / variances(chains).within);
}

double effective_size(const Chains& chains) {
  const std::size_t length = chains[0].size();
  const double draws = static_cast<double>(length * chains.size());
  const auto [within, pooled] = variances(chains);
  if (pooled == 0) return draws;
  std::vector<double> rho;
  for (std::size_t lag = 0; lag + 2 < length; ++lag) {
    std::vector<double> each;
    for (const auto& chain : chains) {
      each.push_back(covariance(chain, lag, static_cast<double>(length)));
    }
    rho.push_back(lag == 0 ? 1 : 1 - (within - mean(each)) / pooled);
  }
  double tau = -1;
  double smallest = rho[0] + rho[1];
  std::size_t lag = 0;
  for (; rho[lag] + rho[lag + 1] > 0 && lag + 5 < length; lag += 2) {
    smallest = std::min(smallest, rho[lag] + rho[lag + 1]);
    tau += 2 * smallest;
  }
  return draws / std::max(tau + std::max(0.0, rho[lag]), 1 / std::log10(draws));
}

ChainDiagnostics diagnose(const Chains& chains) {
  const Chains halves = halves_of(chains);
  const double median = quantile(halves, 0.5);
  const Chains folded = changed(halves, [&](double draw) { return std::abs(draw - median); });
  const auto below = [&](double probability) {
    const double cut = quantile(chains, probability);
    return halves_of(changed(chains, [&](double draw) { return draw <= cut ? 1.0 : 0.0; }));
  };
  return {
      .r_hat = std::max(r_hat(normal_scores(halves)), r_hat(normal_scores(folded))),
      .ess_bulk = effective_size(normal_scores(halves)),
      .ess_tail = std::min(effective_size(below(0.05)), effective_size(below(0.95))),
  };
}

}  // namespace by_definition

void expect_as_by_definition(const std::vector<std::vector<double>>& chains) {
  const ChainDiagnostics wanted = by_definition::diagnose(chains);

  const ChainDiagnostics found = diagnose(chains);

  EXPECT_NEAR(found.r_hat, wanted.r_hat, 1e-11 * wanted.r_hat);
  EXPECT_NEAR(found.ess_bulk, wanted.ess_bulk, 1e-11 * wanted.ess_bulk);
  EXPECT_NEAR(found.ess_tail, wanted.ess_tail, 1e-11 * wanted.ess_tail);
}

TEST(ChainDiagnostics, AreWhatTheirDefinitionsSay) {
  for (const int length : {60, 61}) {
    expect_as_by_definition(autoregressive(0.5, 0.3, length));
  }
}

TEST(ChainDiagnostics, AreWhatTheirDefinitionsSayWhereManyDrawsTie) {
  for (const int length : {60, 61}) {
    for (const double step : {0.1, 0.5, 1.0}) {
      const auto chains =
          by_definition::changed(autoregressive(0.5, 0.3, length),
                                 [&](double draw) { return step * std::round(draw / step); });
      SCOPED_TRACE("steps of " + std::to_string(step) + ", length " + std::to_string(length));
      expect_as_by_definition(chains);
    }
  }
}

// The scores of two values are those values moved and stretched, which no effective size sees; and
// the lower tail is one of the two values, where the upper tail is all of them.
TEST(ChainDiagnostics, SeeNoDifferenceBetweenBulkAndTailOfTwoValues) {
  const auto chains = by_definition::changed(autoregressive(0.8, 0, 1000),
                                             [](double draw) { return draw < 0 ? 2.0 : 7.0; });

  const ChainDiagnostics found = diagnose(chains);

  EXPECT_LT(found.ess_bulk, 2000);
  EXPECT_NEAR(found.ess_tail, found.ess_bulk, 1e-9 * found.ess_bulk);
}

TEST(ChainDiagnostics, SayNothingIsUncertainAboutAConstant) {
  const std::vector<std::vector<double>> chains(4, std::vector<double>(100, 2.5));

  EXPECT_EQ(diagnose(chains), (ChainDiagnostics{.r_hat = 1, .ess_bulk = 400, .ess_tail = 400}));
}

TEST(ChainDiagnostics, RefuseChainsTooShortToSplit) {
  const std::vector<std::vector<double>> chains(4, std::vector<double>(3, 1.0));

  EXPECT_THAT([&] { (void)diagnose(chains); },
              testing::ThrowsMessage<std::logic_error>(
                  testing::HasSubstr("at least four draws in every chain")));
}

TEST(ChainDiagnostics, RefuseChainsOfSeveralLengths) {
  const std::vector<std::vector<double>> chains{{1, 2, 3, 4, 5}, {1, 2, 3, 4}, {1, 2, 3, 4, 5, 6}};

  EXPECT_THAT([&] { (void)diagnose(chains); },
              testing::ThrowsMessage<std::logic_error>(testing::HasSubstr("chains of one length")));
}

TEST(ChainDiagnostics, RefuseAnotherNumberOfDraws) {
  const ChainDiagnoser diagnoser({.chains = 2, .length = 4});

  EXPECT_THAT([&] { (void)diagnoser.diagnose(std::vector<double>(9)); },
              testing::ThrowsMessage<std::logic_error>(
                  testing::HasSubstr("as many draws as their chains have")));
}

TEST(ChainDiagnostics, RefuseNoChains) {
  EXPECT_THAT([] { (void)diagnose({}); },
              testing::ThrowsMessage<std::logic_error>(testing::HasSubstr("at least one chain")));
}

}  // namespace
}  // namespace keenfall::numerics
