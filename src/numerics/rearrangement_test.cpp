#include "numerics/rearrangement.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <stdexcept>

namespace keenfall::numerics {
namespace {

// Permeability of the human chorioamnion, at term and at 12 to 26 weeks: Hollander & Wolfe 1999,
// Nonparametric Statistical Methods (2nd ed.), table 4.1; the example of R's ?wilcox.test and of
// coin's ?LocationTests. The exact rank p is printed there as 0.2544; all twelve digits, and the p
// of the means, by coin 1.4-2 on R 4.2.2 and by going through all 3003 arrangements in R.
constexpr std::array kAtTerm{0.80, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46};
constexpr std::array kEarlier{1.15, 0.88, 0.90, 0.74, 1.21};

TEST(Rearrangement, OfMeansAgreesWithCoinOnTheChorioamnionData) {
  const RearrangementTest test = rearrange_means(kAtTerm, kEarlier, {});

  EXPECT_TRUE(test.exact);
  EXPECT_NEAR(test.p_two_sided, 0.131868131868, 1e-12);
  EXPECT_DOUBLE_EQ(test.smallest_possible_p, 1.0 / 3003);
}

TEST(Rearrangement, OfRanksAgreesWithHollanderAndWolfe) {
  const RearrangementTest test = rearrange_ranks(kAtTerm, kEarlier, {});

  EXPECT_NEAR(test.p_two_sided, 0.2544, 5e-5);
  EXPECT_NEAR(test.p_two_sided, 0.254412254412, 1e-12);
}

TEST(Rearrangement, ComesToTheSameWhicheverGroupIsNamedFirst) {
  EXPECT_DOUBLE_EQ(rearrange_means(kEarlier, kAtTerm, {}).p_two_sided,
                   rearrange_means(kAtTerm, kEarlier, {}).p_two_sided);
}

// Closed form: of the 20 ways to deal six values into threes, two set them as far apart as can be.
TEST(Rearrangement, OfThreeAgainstThreeGoesNoLowerThanOneInTen) {
  const RearrangementTest test =
      rearrange_means(std::array{1.0, 2.0, 3.0}, std::array{10.0, 11.0, 12.0}, {});

  EXPECT_DOUBLE_EQ(test.p_two_sided, 0.1);
  EXPECT_DOUBLE_EQ(test.smallest_possible_p, 0.1);
}

TEST(Rearrangement, TakesRandomOnesWhereThereAreTooManyAndSaysItsError) {
  const RearrangementTest test =
      rearrange_means(kAtTerm, kEarlier, {.most_counted = 1000, .random_count = 20000});

  EXPECT_FALSE(test.exact);
  EXPECT_NEAR(test.monte_carlo_error, std::sqrt(0.1319 * 0.8681 / 20000), 1e-4);
  EXPECT_NEAR(test.p_two_sided, 0.131868131868, 4 * test.monte_carlo_error);
}

TEST(Rearrangement, FindsNothingUnusualInEqualValues) {
  EXPECT_DOUBLE_EQ(rearrange_means(std::array{2.1, 2.1}, std::array{2.1, 2.1, 2.1}, {}).p_two_sided,
                   1);
}

TEST(Rearrangement, RefusesAnEmptyGroup) {
  EXPECT_THROW((void)rearrange_means(kAtTerm, {}, {}), std::logic_error);
}

TEST(MidRanks, ShareTheMeanRankOfTies) {
  const std::array values{3.0, 1.0, 3.0, 2.0, 3.0};

  EXPECT_EQ(mid_ranks(values), (std::vector<double>{4, 1, 4, 2, 4}));
}

}  // namespace
}  // namespace keenfall::numerics
