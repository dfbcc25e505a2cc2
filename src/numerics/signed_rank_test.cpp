#include "numerics/signed_rank.h"

#include <gtest/gtest.h>

#include <array>
#include <stdexcept>
#include <vector>

namespace keenfall::numerics {
namespace {

// Hamilton depression scale of nine patients before and after a tranquilliser: Hollander & Wolfe
// 1973, p. 29; the example of R's ?wilcox.test, which prints V = 40, p = 0.01953 (one-sided).
std::vector<double> falls_in_depression() {
  constexpr std::array kBefore{1.83, 0.50, 1.62, 2.48, 1.68, 1.88, 1.55, 3.06, 1.30};
  constexpr std::array kAfter{0.878, 0.647, 0.598, 2.05, 1.06, 1.29, 1.06, 3.14, 1.29};
  std::vector<double> falls;
  for (std::size_t i = 0; i < kBefore.size(); ++i) falls.push_back(kBefore[i] - kAfter[i]);
  return falls;
}

TEST(SignedRank, AgreesWithHollanderAndWolfeOnTheDepressionScale) {
  const SignedRankTest test = signed_rank_test(falls_in_depression());

  EXPECT_DOUBLE_EQ(test.rank_sum, 40);
  EXPECT_NEAR(test.p_greater, 0.01953125, 1e-12);
  EXPECT_NEAR(test.p_two_sided, 0.0390625, 1e-12);
  EXPECT_DOUBLE_EQ(test.smallest_possible_p, 2.0 / 512);
}

// By hand: ranks 1.5, 1.5, 3 of 1, -1, 2; the positive ones add to 4.5. Of the eight signs, sums of
// 4.5 and more arise from {1.5, 3} twice and from all three: p greater 3/8, both sides 6/8.
TEST(SignedRank, SharesRanksOfTiesAndLeavesZerosOut) {
  const SignedRankTest test = signed_rank_test(std::array{1.0, -1.0, 0.0, 2.0});

  EXPECT_EQ(test.differences, 3U);
  EXPECT_DOUBLE_EQ(test.rank_sum, 4.5);
  EXPECT_DOUBLE_EQ(test.p_greater, 3.0 / 8);
  EXPECT_DOUBLE_EQ(test.p_two_sided, 6.0 / 8);
}

TEST(SignedRank, OfNothingButZerosSaysNothing) {
  EXPECT_DOUBLE_EQ(signed_rank_test(std::array{0.0, 0.0}).p_two_sided, 1);
  EXPECT_DOUBLE_EQ(signed_rank_test({}).p_two_sided, 1);
}

TEST(SignedRank, RefusesMoreThanItCounts) {
  EXPECT_THROW((void)signed_rank_test(std::vector<double>(201, 1.0)), std::logic_error);
}

// As in rearrangement_test.cpp; Hollander & Wolfe and coin 1.4-2 give -0.305 and -0.76 to 0.15.
TEST(HodgesLehmann, AgreesWithHollanderAndWolfeOnTheChorioamnionData) {
  constexpr std::array kLate{0.80, 0.83, 1.89, 1.04, 1.45, 1.38, 1.91, 1.64, 0.73, 1.46};
  constexpr std::array kEarly{1.15, 0.88, 0.90, 0.74, 1.21};
  const Shift shift = hodges_lehmann_shift(kEarly, kLate);

  EXPECT_NEAR(shift.estimate, -0.305, 1e-10);
  EXPECT_NEAR(shift.lo95, -0.76, 1e-10);
  EXPECT_NEAR(shift.hi95, 0.15, 1e-10);
}

TEST(HodgesLehmann, OfTwoValuesIsTheirDifference) {
  const Shift shift = hodges_lehmann_shift(std::array{5.0}, std::array{3.0});

  EXPECT_DOUBLE_EQ(shift.estimate, 2);
  EXPECT_DOUBLE_EQ(shift.lo95, 2);
  EXPECT_DOUBLE_EQ(shift.hi95, 2);
}

}  // namespace
}  // namespace keenfall::numerics
