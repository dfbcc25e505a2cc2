#include "numerics/normal_scores.h"

#include "numerics/random.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <stdexcept>
#include <vector>

namespace keenfall::numerics {
namespace {

// The ranks that scores came from: r = Phi(z) (S + 1/4) + 3/8.
std::vector<double> ranks_of_scores(const std::vector<double>& values) {
  std::vector<double> ranks;
  for (const double score : NormalScores(values.size()).of(in_order(values))) {
    const double probability = 0.5 * std::erfc(-score / std::sqrt(2));
    ranks.push_back(probability * (static_cast<double>(values.size()) + 0.25) + 0.375);
  }
  return ranks;
}

testing::Matcher<const std::vector<double>&> are_about(const std::vector<double>& wanted) {
  return testing::Pointwise(testing::DoubleNear(1e-12), wanted);
}

TEST(NormalScores, StandForTheRankOfEachPlace) {
  EXPECT_THAT(ranks_of_scores({30, -10, 20, 1e9}), are_about({3, 1, 2, 4}));
}

TEST(NormalScores, OfTiesStandForTheirMeanRank) {
  EXPECT_THAT(ranks_of_scores({2, 1, 2, 5, 1, 2}), are_about({4, 1.5, 4, 6, 1.5, 4}));
}

TEST(NormalScores, OfOneValueAndOfEqualValuesAreZero) {
  EXPECT_THAT(NormalScores(1).of(in_order(std::vector<double>{7})), are_about({0}));
  EXPECT_THAT(NormalScores(3).of(in_order(std::vector<double>{7, 7, 7})), are_about({0, 0, 0}));
}

std::vector<double> random_with_ties(std::size_t count) {
  RandomStream random({11}, 0);
  std::vector<double> values;
  for (std::size_t i = 0; i < count; ++i) values.push_back(std::round(8 * random.normal()) / 8);
  return values;
}

TEST(NormalScores, FindTheOrderAndThePlacesOfValues) {
  const std::vector<double> values = random_with_ties(500);

  const Ordered sorted = in_order(values);

  std::vector<double> wanted = values;
  std::ranges::sort(wanted);
  EXPECT_EQ(sorted.values, wanted);
  for (std::size_t i = 0; i < 500; ++i) EXPECT_EQ(values[sorted.places[i]], sorted.values[i]);
}

TEST(NormalScores, OrderDistancesAsSortingThemDoes) {
  const std::vector<double> values = random_with_ties(500);

  for (const double centre : {-100.0, -0.25, 0.0, 0.3, 100.0}) {
    const Ordered distances = distances_from(centre, in_order(values));

    std::vector<double> wanted;
    for (const double value : values) wanted.push_back(std::abs(value - centre));
    const std::vector<double> each = wanted;
    std::ranges::sort(wanted);
    EXPECT_EQ(distances.values, wanted);
    std::vector<bool> met(500);
    for (std::size_t i = 0; i < 500; ++i) {
      EXPECT_EQ(each[distances.places[i]], distances.values[i]);
      met[distances.places[i]] = true;
    }
    EXPECT_EQ(std::ranges::count(met, true), 500);
  }
}

TEST(NormalScores, RefuseAnotherCountOfValues) {
  const NormalScores scores(3);

  EXPECT_THAT(
      [&] {
        (void)scores.of(in_order(std::vector<double>{1, 2}));
      },
      testing::ThrowsMessage<std::logic_error>(testing::HasSubstr("one count of values")));
}

TEST(NormalScores, RefuseToBeOfNoValues) { EXPECT_THROW((void)NormalScores(0), std::logic_error); }

}  // namespace
}  // namespace keenfall::numerics
