#include "telling/picture_words.h"

#include "verdicts/made_judgement_test.h"

#include <gtest/gtest.h>

namespace keenfall::telling {
namespace {

using verdicts::testing::made_judgement;

// Worked by hand from the rules in rounded.h: two figures below 100, whole numbers above.
TEST(PictureWords, RoundAReadingAsTheTablesDo) {
  const verdicts::Judgement judgement = made_judgement();
  const verdicts::CurvePoint far{.cuts = 380,
                                 .reading = {.median = 12345, .lo95 = 9.71, .hi95 = 20001.4},
                                 .beyond_what_was_cut = true};

  EXPECT_EQ(curve_point_words(judgement, far), "12345 gf (9.7 to 20001, beyond what was cut)");
  EXPECT_EQ(start_words(judgement, judgement.arms[0]), "104 gf");
}

TEST(PictureWords, SayWhatIsCountedWhereStartsAreDrawn) {
  verdicts::Judgement judgement = made_judgement();
  judgement.counted = {.one = "minute", .many = "minutes", .is_measured = true};

  EXPECT_EQ(starts_words(judgement), "thread push reading at 0 minutes, gf");
}

// A start of 104 gf doubles to 208; where higher is keener it halves to 52.
TEST(PictureWords, KnowTheReadingThatEdgesAreComparedAt) {
  verdicts::Judgement judgement = made_judgement();
  const verdicts::ArmResult& arm = judgement.arms[0];
  using verdicts::ComparedAt;

  EXPECT_DOUBLE_EQ(reading_compared(judgement, arm, {}).value(), 208);
  EXPECT_DOUBLE_EQ(
      reading_compared(judgement, arm, {.what = ComparedAt::level, .level = 4}).value(), 416);
  EXPECT_DOUBLE_EQ(
      reading_compared(judgement, arm, {.what = ComparedAt::common_reading, .reading = 250})
          .value(),
      250);
  EXPECT_FALSE(reading_compared(judgement, arm, {.what = ComparedAt::test}).has_value());
  judgement.kind.keener_when = trials::KeenerWhen::higher;
  EXPECT_DOUBLE_EQ(reading_compared(judgement, arm, {}).value(), 52);
}

TEST(PictureWords, HaveNoStartOfAnEdgeThatWasOnlyTested) {
  verdicts::Judgement judgement = made_judgement();
  judgement.arms[0].start_reading.reset();

  EXPECT_EQ(start_words(judgement, judgement.arms[0]), "");
  EXPECT_FALSE(reading_compared(judgement, judgement.arms[0], {}).has_value());
}

TEST(PictureWords, KnowTheReadingAtWhichATestOfAKnownLevelIsFailed) {
  verdicts::Judgement judgement = made_judgement();
  const verdicts::At at{.what = verdicts::ComparedAt::test};
  judgement.test = verdicts::TestJudged{.words = "slices newsprint", .level = 3};
  EXPECT_DOUBLE_EQ(reading_compared(judgement, judgement.arms[0], at).value(), 312);

  judgement.test->level.reset();

  EXPECT_FALSE(reading_compared(judgement, judgement.arms[0], at));
}

}  // namespace
}  // namespace keenfall::telling
