#include "verdicts/curve_cuts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <stdexcept>
#include <vector>

namespace keenfall::verdicts {
namespace {

using ::testing::Contains;
using ::testing::Each;
using ::testing::Ge;

std::vector<std::vector<double>> of_lengths(const std::vector<double>& longest) {
  return curve_cuts(1, longest);
}

// Followed from the contract: what stands in one row is at one count.
TEST(CurveCuts, OfArmsCutToDifferentLengthsStandInOneRow) {
  const auto cuts = of_lengths({14, 42});

  ASSERT_EQ(cuts.size(), 2U);
  EXPECT_LT(cuts[0].size(), cuts[1].size());
  EXPECT_TRUE(std::ranges::equal(cuts[0], std::span(cuts[1]).first(cuts[0].size())));
}

TEST(CurveCuts, OfEveryArmHoldItsLastCutAndEndOnceAndAHalfAsFar) {
  const auto cuts = of_lengths({14, 42, 255});

  EXPECT_THAT(cuts[0], Contains(14));
  EXPECT_EQ(cuts[0].back(), 21);
  EXPECT_THAT(cuts[1], Contains(42));
  EXPECT_EQ(cuts[1].back(), 63);
  EXPECT_THAT(cuts[2], Contains(255));
  EXPECT_EQ(cuts[2].back(), 382.5);
}

TEST(CurveCuts, RiseFromNoneByStepsThatAreWorthARow) {
  const auto cuts = of_lengths({14, 14, 20}).back();

  EXPECT_EQ(cuts.front(), 0);
  std::vector<double> steps;
  for (std::size_t i = 2; i < cuts.size(); ++i) steps.push_back(cuts[i] / cuts[i - 1]);
  EXPECT_THAT(steps, Each(Ge(1.0499)));
}

TEST(CurveCuts, OfOneRunReadOnceAfterTheStartAreItsOwn) {
  EXPECT_THAT(curve_cuts(5, std::array{5.0}).front(), Contains(5));
  EXPECT_EQ(curve_cuts(5, std::array{5.0}).front().back(), 7.5);
}

TEST(CurveCuts, NeedACheckpointAfterTheStart) {
  EXPECT_THROW((void)curve_cuts(0, std::array{5.0}), std::logic_error);
  EXPECT_TRUE(of_lengths({}).empty());
}

}  // namespace
}  // namespace keenfall::verdicts
