#include "numerics/summaries.h"

#include "numerics/random.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <stdexcept>
#include <vector>

namespace keenfall::numerics {
namespace {

// R 4.2: quantile(c(1, 2, 4, 8, 16), c(.025, .3, .95)) = 1.1, 2.4, 14.4 (type 7).
TEST(Quantiles, InterpolateAsRsDefaultDoes) {
  constexpr std::array kSorted{1.0, 2.0, 4.0, 8.0, 16.0};

  EXPECT_DOUBLE_EQ(quantile_of_sorted(kSorted, 0.025), 1.1);
  EXPECT_DOUBLE_EQ(quantile_of_sorted(kSorted, 0.3), 2.4);
  EXPECT_DOUBLE_EQ(quantile_of_sorted(kSorted, 0.95), 14.4);
  EXPECT_DOUBLE_EQ(quantile_of_sorted(kSorted, 1), 16);
}

TEST(Quantiles, OfOneValueAreThatValueAndOfNoneAreMisuse) {
  EXPECT_DOUBLE_EQ(quantile_of_sorted(std::array{3.0}, 0.9), 3);
  EXPECT_THROW((void)quantile_of_sorted({}, 0.5), std::logic_error);
}

TEST(Intervals, AreTheQuantilesOfTheSortedDraws) {
  RandomStream random({11}, 0);
  for (std::size_t size = 1; size <= 120; ++size) {
    std::vector<double> draws;
    for (std::size_t i = 0; i < size; ++i) draws.push_back(std::round(4 * random.normal()));
    std::vector<double> sorted = draws;
    std::ranges::sort(sorted);

    const Interval found = interval_of(draws);

    EXPECT_EQ(found.lo95, quantile_of_sorted(sorted, 0.025)) << size;
    EXPECT_EQ(found.lo90, quantile_of_sorted(sorted, 0.05)) << size;
    EXPECT_EQ(found.median, quantile_of_sorted(sorted, 0.5)) << size;
    EXPECT_EQ(found.hi90, quantile_of_sorted(sorted, 0.95)) << size;
    EXPECT_EQ(found.hi95, quantile_of_sorted(sorted, 0.975)) << size;
  }
}

TEST(Intervals, OfALogAreIntervalsOfTheRatioThroughExp) {
  const Interval log_ratio = interval_of({-1, 0, 1, 2, 3});

  EXPECT_DOUBLE_EQ(exp_of(log_ratio).median, std::exp(1.0));
  EXPECT_DOUBLE_EQ(exp_of(log_ratio).lo95, std::exp(log_ratio.lo95));
}

TEST(Variances, UseTheSampleDivisor) {
  EXPECT_DOUBLE_EQ(variance_of(std::array{1.0, 2.0, 3.0, 4.0}), 5.0 / 3.0);
}

}  // namespace
}  // namespace keenfall::numerics
