#include "planning/chance_words.h"

#include <gtest/gtest.h>

namespace keenfall::planning {
namespace {

TEST(ChanceWords, SayWhatIsTakenToBeTrue) {
  EXPECT_EQ(if_true(1), "if both last equally long");
  EXPECT_EQ(if_true(1.2247), "if one lasts 1.22 times as long");
  EXPECT_EQ(if_true(2), "if one lasts twice as long");
  EXPECT_EQ(if_true(3), "if one lasts three times as long");
  EXPECT_EQ(if_true(0.5), "if one lasts twice as long");
}

ChancesAt settled_at(double ratio, double probability) {
  return {.true_ratio = ratio, .settled = {.probability = probability}};
}

TEST(ChanceWords, SayHowManyOfAHundredWouldSettleIt) {
  const PlanChances chances{
      .at = {settled_at(1, 0.778), settled_at(1.5, 0.81), settled_at(3, 0.999)}, .trials = 400};

  EXPECT_EQ(
      in_words(chances),
      "Of 100 such trials about 78 would settle it if both last equally long, 81 if one lasts "
      "1.5 times as long and nearly all if one lasts three times as long.");
}

TEST(ChanceWords, SayHardlyAnyWhereNoneDid) {
  EXPECT_EQ(in_words(PlanChances{.at = {settled_at(1, 0)}}),
            "Of 100 such trials hardly any would settle it if both last equally long.");
}

TEST(ChanceWords, SayInWhatWhereThereAreSeveral) {
  EXPECT_EQ(in_words(PlanChances{.at = {settled_at(2, 0.99)}}, "In sisal"),
            "In sisal, of 100 such trials about 99 would settle it if one lasts twice as long.");
}

TEST(ChanceWords, OfNoChancesAreNone) { EXPECT_EQ(in_words(PlanChances{}), ""); }

TEST(ChanceWords, SayHowManyRunsAreNeeded) {
  EXPECT_EQ(in_words(RunsNeeded{.true_ratio = 1.5, .runs_each = 6}),
            "6 runs each would settle it in four of five such trials if one lasts 1.5 times as "
            "long.");
  EXPECT_EQ(in_words(RunsNeeded{.true_ratio = 1}),
            "More than 20 runs each would be needed to settle it in four of five such trials if "
            "both last equally long.");
}

}  // namespace
}  // namespace keenfall::planning
