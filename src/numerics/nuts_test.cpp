#include "numerics/nuts.h"

#include "numerics/chain_diagnostics.h"
#include "numerics/nuts_warmup.h"
#include "numerics/summaries.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <numeric>

namespace keenfall::numerics {
namespace {

// Two correlated normals on very different scales, closed form: sds 1 and 100, correlation 0.8.
LogDensity correlated_normals() {
  return [](std::span<const double> q, std::span<double> gradient) {
    const double x = q[0];
    const double y = q[1] / 100;
    const double scale = 1 / (1 - 0.8 * 0.8);
    gradient[0] = -scale * (x - 0.8 * y);
    gradient[1] = -scale * (y - 0.8 * x) / 100;
    return -0.5 * scale * (x * x - 1.6 * x * y + y * y);
  };
}

std::vector<double> pooled(const NutsDraws& draws, std::size_t coordinate) {
  std::vector<double> all;
  for (const auto& chain : draws.of(coordinate)) all.insert(all.end(), chain.begin(), chain.end());
  return all;
}

NutsDraws sample(const LogDensity& density, std::size_t dimension, unsigned thread_count) {
  const std::vector<std::vector<double>> starts(4, std::vector<double>(dimension, 0.1));
  return sample_nuts([density] { return density; },
                     starts,
                     {},
                     {11},
                     base::threads(thread_count),
                     base::unwatched());
}

TEST(Nuts, RecoversTheMomentsOfCorrelatedNormals) {
  const NutsDraws draws = sample(correlated_normals(), 2, 1);
  const std::vector<double> x = pooled(draws, 0);
  const std::vector<double> y = pooled(draws, 1);

  double product = 0;
  for (std::size_t i = 0; i < x.size(); ++i) product += x[i] * y[i] / 100;
  EXPECT_NEAR(mean_of(x), 0, 0.12);
  EXPECT_NEAR(std::sqrt(variance_of(x)), 1, 0.08);
  EXPECT_NEAR(std::sqrt(variance_of(y)), 100, 8);
  EXPECT_NEAR(product / static_cast<double>(x.size()), 0.8, 0.1);
  EXPECT_LT(diagnose(draws.of(0)).r_hat, 1.01);
}

// The log of a gamma(3) variable: mean digamma(3) = 0.92278, variance trigamma(3) = 0.39493
// (Abramowitz & Stegun 1964, chapter 6).
TEST(Nuts, RecoversASkewedDensity) {
  const auto density = [](std::span<const double> q, std::span<double> gradient) {
    gradient[0] = 3 - std::exp(q[0]);
    return 3 * q[0] - std::exp(q[0]);
  };
  const NutsDraws draws = sample(density, 1, 1);

  EXPECT_NEAR(mean_of(pooled(draws, 0)), 0.92278, 0.06);
  EXPECT_NEAR(variance_of(pooled(draws, 0)), 0.39493, 0.05);
}

TEST(Nuts, GivesTheSameDrawsOnOneThreadAndOnMany) {
  const NutsDraws one = sample(correlated_normals(), 2, 1);
  const NutsDraws three = sample(correlated_normals(), 2, 3);

  for (std::size_t c = 0; c < one.chains.size(); ++c) {
    EXPECT_EQ(one.chains[c].draws, three.chains[c].draws);
  }
}

TEST(Nuts, CountsDivergencesWhereTheDensityBreaksOff) {
  // A funnel: log scale v ~ N(0, 3), ten coordinates ~ N(0, exp(v/2)) (Neal 2003).
  const auto funnel = [](std::span<const double> q, std::span<double> gradient) {
    const double v = q[0];
    double log_density = -v * v / 18;
    gradient[0] = -v / 9;
    for (std::size_t i = 1; i < q.size(); ++i) {
      const double scaled = q[i] * q[i] * std::exp(-v);
      log_density += -0.5 * scaled - 0.5 * v;
      gradient[0] += 0.5 * scaled - 0.5;
      gradient[i] = -q[i] * std::exp(-v);
    }
    return log_density;
  };
  const NutsDraws draws = sample(funnel, 11, 1);

  int divergences = 0;
  for (const NutsChain& chain : draws.chains) divergences += chain.divergences;
  EXPECT_GT(divergences, 0);
}

TEST(Nuts, StopsWhenTheReportAsksItTo) {
  const std::vector<std::vector<double>> starts(2, {0.1, 0.1});
  int reports = 0;
  const NutsDraws draws = sample_nuts([] { return correlated_normals(); },
                                      starts,
                                      {},
                                      {1},
                                      base::one_thread(),
                                      [&reports](const base::Progress&) { return ++reports < 3; });

  EXPECT_TRUE(draws.stopped);
  EXPECT_EQ(reports, 3);
}

// Two chains of 100 and 9 iterations are 218, reported every 20: up to 200 of 218.
TEST(Nuts, ReportsUpToAllThatIsDoneAndNoMore) {
  const std::vector<std::vector<double>> starts(2, {0.1, 0.1});
  std::vector<double> fractions;
  (void)sample_nuts([] { return correlated_normals(); },
                    starts,
                    {.warmup = 100, .draws = 9},
                    {1},
                    base::one_thread(),
                    [&fractions](const base::Progress& progress) {
                      fractions.push_back(progress.fraction_done);
                      return true;
                    });

  ASSERT_EQ(fractions.size(), 10U);
  EXPECT_DOUBLE_EQ(fractions.front(), 20.0 / 218);
  EXPECT_DOUBLE_EQ(fractions.back(), 200.0 / 218);
}

// Draws 1, 2 and 3 have the variance 1: (3 x 1 + 5 x guess) / 8, the rule of nuts_warmup.h.
TEST(NutsWarmUp, ShrinksVariancesAsIfFiveMoreDrawsHadShownTheGuess) {
  RunningVariances unguessed(1, {});
  RunningVariances guessed(1, {2});
  for (const double draw : {1.0, 2.0, 3.0}) {
    unguessed.add(std::array{draw});
    guessed.add(std::array{draw});
  }

  EXPECT_DOUBLE_EQ(unguessed.shrunk()[0], (3 + 5 * 0.001) / 8);
  EXPECT_DOUBLE_EQ(guessed.shrunk()[0], (3 + 5 * 2.0) / 8);
}

}  // namespace
}  // namespace keenfall::numerics
