#include "telling/cuts_compared.h"

#include "verdicts/made_judgement_test.h"

#include <gtest/gtest.h>

#include <stdexcept>

namespace keenfall::telling {
namespace {

using verdicts::At;
using verdicts::ComparedAt;
using verdicts::Judgement;
using verdicts::testing::made_judgement;

constexpr At kAtFour{.what = ComparedAt::level, .level = 4};
constexpr At kAtTest{.what = ComparedAt::test};

TEST(CutsCompared, AreKnownAtTheLevelThatIsReportedOnly) {
  const Judgement judgement = made_judgement();
  const verdicts::ArmResult& arm = judgement.arms[0];

  EXPECT_TRUE(cuts_are_known(judgement, arm, {}));
  EXPECT_TRUE(cuts_are_known(judgement, arm, kAtFour));
  EXPECT_FALSE(cuts_are_known(judgement, arm, {.what = ComparedAt::level, .level = 3}));
  EXPECT_FALSE(cuts_are_known(judgement, arm, {.what = ComparedAt::common_reading}));
  EXPECT_FALSE(cuts_are_known(judgement, arm, kAtTest));
}

// It has one number of cuts, which stands for the level too.
TEST(CutsCompared, OfAnEdgeThatWasOnlyTestedAreThoseOfItsTest) {
  const Judgement judgement = made_judgement();
  verdicts::ArmResult arm = judgement.arms[0];
  arm.test = verdicts::CutsToLevel{.cuts = verdicts::testing::around(77, 0.1)};
  arm.half_keenness.reset();
  arm.stop_level.reset();

  EXPECT_TRUE(cuts_are_known(judgement, arm, kAtTest));
  EXPECT_TRUE(cuts_are_known(judgement, arm, kAtFour));
  EXPECT_FALSE(cuts_are_known(judgement, arm, {}));
  EXPECT_EQ(cuts_compared(arm, kAtFour).cuts.median, 77);
  arm.test.reset();
  EXPECT_FALSE(cuts_are_known(judgement, arm, kAtFour));
  EXPECT_THROW((void)cuts_compared(arm, kAtFour), std::logic_error);
}

TEST(CutsCompared, AreNotSaidOfAPairOfWhichOneIsNotKnown) {
  Judgement judgement = made_judgement();
  verdicts::Comparison pair = judgement.comparisons[0];
  EXPECT_EQ(cuts_sentence(judgement, pair), "108 cuts (10.8 m) against 34 (3.4 m).");

  judgement.arms[pair.b].half_keenness.reset();

  EXPECT_EQ(cuts_sentence(judgement, pair), "");
}

TEST(CutsCompared, AreThoseOfTheLongerRunWhereNeitherGotThere) {
  Judgement judgement = made_judgement();
  const verdicts::Comparison& pair = judgement.comparisons[0];
  for (const std::size_t arm : {pair.a, pair.b}) {
    judgement.arms[arm].half_keenness->beyond_what_was_cut = true;
  }
  judgement.arms[pair.a].longest_run_cuts = 20;
  judgement.arms[pair.b].longest_run_cuts = 60;

  EXPECT_EQ(cuts_sentence(judgement, pair), "Neither was cut that far: 60 cuts (6.0 m) at most.");
}

}  // namespace
}  // namespace keenfall::telling
