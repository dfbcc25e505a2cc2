// What a family says of draws that are known beforehand.
#include "verdicts/family.h"

#include <gtest/gtest.h>

#include <cmath>
#include <utility>

namespace keenfall::verdicts {
namespace {

constexpr int kDraws = 1000;

// Log cuts about a middle, evenly from half an e-fold below to half an e-fold above.
LastingArm lasting_about(double log_cuts, std::size_t index) {
  LastingArm arm{.index = index, .runs = 4};
  for (int d = 0; d < kDraws; ++d) arm.log_cuts.push_back(log_cuts + (d + 0.5) / kDraws - 0.5);
  return arm;
}

// Every draw of it the same, so that a ratio to it moves as the other does.
LastingArm lasting_exactly(double log_cuts, std::size_t index) {
  return {.index = index, .runs = 4, .log_cuts = blunting::Draws(kDraws, log_cuts)};
}

Comparison compared(LastingArm one, LastingArm other, double margin) {
  const Family family{.arms = {std::move(one), std::move(other)}};
  return compare_family({}, family, all_pairs(2), {.worth_it_margin = margin}).front();
}

TEST(AFamily, SaysWhichShareOfTheDrawsIsLongerAndWhichWorthHaving) {
  const Comparison pair = compared(lasting_about(3.2, 0), lasting_exactly(3, 1), std::exp(0.4));

  EXPECT_NEAR(pair.probability_longer, 0.7, 1e-9);
  EXPECT_NEAR(pair.probability_worth_having, 0.3, 1e-9);
  EXPECT_NEAR(pair.ratio.median, std::exp(0.2), 1e-3);
}

TEST(AFamily, PutsTheLongerLastingArmFirst) {
  const Comparison pair = compared(lasting_exactly(3, 5), lasting_about(3.2, 8), 1.5);

  EXPECT_EQ(pair.a, 8U);
  EXPECT_EQ(pair.b, 5U);
  EXPECT_NEAR(pair.probability_longer, 0.7, 1e-9);
}

TEST(AFamily, SaysThatItWentBeyondWhatWasCutWhereEitherArmDid) {
  LastingArm beyond = lasting_about(3.2, 0);
  beyond.beyond_what_was_cut = true;

  EXPECT_TRUE(compared(beyond, lasting_exactly(3, 1), 1.5).beyond_what_was_cut);
  EXPECT_TRUE(compared(lasting_exactly(3, 1), beyond, 1.5).beyond_what_was_cut);
  EXPECT_FALSE(compared(lasting_about(3.2, 0), lasting_exactly(3, 1), 1.5).beyond_what_was_cut);
}

// A ratio of 1.5 to 1.7, of which each eighth of the draws says a little more or less: the bounds
// have a Monte-Carlo error of a quarter of that. The verdict is near its boundary only where the
// margin is within two such errors of a bound.
TEST(AFamily, IsNearABoundaryOnlyWithinTwoErrorsOfIt) {
  const auto pair_at = [](double margin) {
    LastingArm longer{.index = 0, .runs = 4};
    for (int d = 0; d < kDraws; ++d) {
      const int eighth = 8 * d / kDraws;
      const double within = (d % (kDraws / 8) + 0.5) / (kDraws / 8.0);
      longer.log_cuts.push_back(3 + std::log(1.5) + 0.1 * within + 0.01 * (eighth % 2));
    }
    return compared(std::move(longer), lasting_exactly(3, 1), margin);
  };
  const double lower = pair_at(1.2).simultaneous.lo95;
  // sd of eight bounds that are 0.01 apart by turns, over the root of eight.
  const double error = 0.01 * std::sqrt(8.0 / 28) / std::sqrt(8.0);

  EXPECT_FALSE(pair_at(lower * std::exp(-4 * error)).near_boundary);
  EXPECT_TRUE(pair_at(lower * std::exp(-1 * error)).near_boundary);
}

}  // namespace
}  // namespace keenfall::verdicts
