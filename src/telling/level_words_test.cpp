#include "telling/level_words.h"

#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::telling {
namespace {

using verdicts::testing::made_judgement;

verdicts::Judgement where_higher_is_keener() {
  verdicts::Judgement judgement = made_judgement();
  judgement.kind = *trials::find_reading_kind("card_bite");
  return judgement;
}

TEST(LevelWords, AreTimesTheStartWhereReadingsRise) {
  const verdicts::Judgement judgement = made_judgement();

  EXPECT_EQ(level_label(judgement, 1.25), "1.25");
  EXPECT_EQ(levels_words(judgement), "reading, times its start");
  EXPECT_EQ(when_at_level(judgement, 1.25), "when the reading has reached 1.25 times its start");
}

// By arithmetic: 1/1.25 = 4/5, 1/1.5 = 2/3; 1/3.7 is no fraction of small numbers.
TEST(LevelWords, AreSharesOfTheStartWhereReadingsFall) {
  const verdicts::Judgement judgement = where_higher_is_keener();

  EXPECT_EQ(level_label(judgement, 1.25), "4/5");
  EXPECT_EQ(level_label(judgement, 1.5), "2/3");
  EXPECT_EQ(level_label(judgement, 2), "1/2");
  EXPECT_EQ(level_label(judgement, 6), "1/6");
  EXPECT_EQ(level_label(judgement, 3.7), "0.27");
  EXPECT_EQ(levels_words(judgement), "reading, as a share of its start");
  EXPECT_EQ(when_at_level(judgement, 3), "when the reading has fallen to 1/3 of its start");
  EXPECT_EQ(level_words(judgement, {.what = verdicts::ComparedAt::level, .level = 4}),
            "to fall to 1/4 of the start reading");
}

// 260 gf is 2.5 times a start of 104 gf, and twice one of 130.
TEST(LevelWords, KnowTheLevelOfEachArmAtACommonReading) {
  verdicts::Judgement judgement = made_judgement();
  judgement.arms[0].start_reading->median = 130;
  verdicts::Comparison pair = judgement.comparisons[0];
  pair.at = {.what = verdicts::ComparedAt::common_reading, .reading = 260};

  const auto levels = levels_compared(judgement, pair);

  ASSERT_TRUE(levels.has_value());
  EXPECT_DOUBLE_EQ(levels->a, 2.5);
  EXPECT_DOUBLE_EQ(levels->b, 2);
  pair.at = {};
  EXPECT_DOUBLE_EQ(levels_compared(judgement, pair)->a, 2);
  pair.at = {.what = verdicts::ComparedAt::test};
  EXPECT_FALSE(levels_compared(judgement, pair).has_value());
}

TEST(LevelWords, NameTheTestThatAnEdgeFails) {
  verdicts::Judgement judgement = made_judgement();
  const verdicts::At at{.what = verdicts::ComparedAt::test};
  const auto words_of = [&](const verdicts::TestJudged& test) {
    judgement.test = test;
    return level_words(judgement, at);
  };

  EXPECT_EQ(words_of({.words = "pass ladder", .rung = 4}), "to fall below rung 4 (pass ladder)");
  EXPECT_EQ(words_of({.words = "slices newsprint"}), "to fail the test \"slices newsprint\"");
  EXPECT_EQ(words_of({}), "to fail the test");
}

TEST(LevelWords, SayWhichWayAReadingGoesToAnotherOne) {
  const verdicts::At at{.what = verdicts::ComparedAt::common_reading, .reading = 400};

  EXPECT_EQ(level_words(made_judgement(), at), "to reach 400 gf");
  EXPECT_EQ(level_words(where_higher_is_keener(), at), "to fall to 400 gf");
}

TEST(LevelWords, SayWhatHasHappenedToAReadingThere) {
  const verdicts::At half;
  const verdicts::At at_four{.what = verdicts::ComparedAt::level, .level = 4};
  const verdicts::At at_reading{.what = verdicts::ComparedAt::common_reading, .reading = 400};

  EXPECT_EQ(level_reached_words(made_judgement(), half), "doubled");
  EXPECT_EQ(level_reached_words(made_judgement(), at_four), "reached 4 times its start");
  EXPECT_EQ(level_reached_words(made_judgement(), at_reading), "reached 400 gf");
  EXPECT_EQ(level_reached_words(where_higher_is_keener(), half), "halved");
  EXPECT_EQ(level_reached_words(where_higher_is_keener(), at_four), "fallen to 1/4 of its start");
  EXPECT_EQ(level_reached_words(where_higher_is_keener(), at_reading), "fallen to 400 gf");
}

TEST(LevelWords, KnowTheLevelOfATestWhereItHasOne) {
  verdicts::Judgement judgement = made_judgement();
  verdicts::Comparison pair = judgement.comparisons[0];
  pair.at = {.what = verdicts::ComparedAt::test};

  judgement.test = verdicts::TestJudged{.words = "slices newsprint", .level = 3};
  ASSERT_TRUE(levels_compared(judgement, pair));
  EXPECT_EQ(levels_compared(judgement, pair)->a, 3);
  EXPECT_EQ(levels_compared(judgement, pair)->b, 3);
  judgement.test->level.reset();
  EXPECT_FALSE(levels_compared(judgement, pair));

  pair.at = {.what = verdicts::ComparedAt::level, .level = 4};
  EXPECT_EQ(levels_compared(judgement, pair)->b, 4);
}

// 12 N is 3 times a reading of 4 N that both have fallen to; 6 N is 1.5 times.
TEST(LevelWords, KnowTheLevelAtACommonReadingWhereItFallsAndNotWithoutAStart) {
  verdicts::Judgement judgement = where_higher_is_keener();
  verdicts::Comparison pair = judgement.comparisons[0];
  pair.at = {.what = verdicts::ComparedAt::common_reading, .reading = 4};
  judgement.arms[pair.a].start_reading->median = 12;
  judgement.arms[pair.b].start_reading->median = 6;
  EXPECT_DOUBLE_EQ(levels_compared(judgement, pair)->a, 3);
  EXPECT_DOUBLE_EQ(levels_compared(judgement, pair)->b, 1.5);

  for (const std::size_t arm : {pair.a, pair.b}) {
    verdicts::Judgement without = judgement;
    without.arms[arm].start_reading.reset();
    EXPECT_FALSE(levels_compared(without, pair)) << arm;
  }
}

}  // namespace
}  // namespace keenfall::telling
