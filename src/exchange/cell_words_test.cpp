#include "exchange/cell_words.h"

#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

TEST(StruckCells, SayNothingWhenEmptyOrNo) {
  for (const char* word : {"", "no", "No", "0", "false", "-"}) {
    EXPECT_EQ(reason_in(word), std::nullopt) << word;
  }
}

TEST(StruckCells, SayYesWithoutAReason) {
  for (const char* word : {"yes", "X", "1", "TRUE"}) {
    EXPECT_EQ(reason_in(word), "no reason given") << word;
  }
}

TEST(StruckCells, SayTheReasonOtherwise) {
  EXPECT_EQ(reason_in("thread slipped"), "thread slipped");
}

TEST(Methods, AreKnownByTheirUsualWords) {
  EXPECT_EQ(motion_of("Push cut"), trials::Motion::push);
  EXPECT_EQ(motion_of("draw"), trials::Motion::draw);
  EXPECT_EQ(motion_of("slicing"), trials::Motion::slice);
  EXPECT_EQ(motion_of("rocking"), trials::Motion::not_recorded);
  EXPECT_EQ(motion_of(""), trials::Motion::not_recorded);
}

TEST(Events, AreKnownByAWordInThem) {
  using enum trials::EventKind;
  EXPECT_EQ(event_kind_of("Twisted the blade"), twisted);
  EXPECT_EQ(event_kind_of("hit a staple"), hit_something);
  EXPECT_EQ(event_kind_of("hit the board"), board_touched);
  EXPECT_EQ(event_kind_of("wet"), wet);
  EXPECT_EQ(event_kind_of("pause of 10 min"), pause);
  EXPECT_EQ(event_kind_of("dropped it"), other);
  EXPECT_EQ(event_kind_of("white spot"), other);
}

TEST(Events, ReadTheirOwnWordsBack) {
  using enum trials::EventKind;
  for (const auto kind : {twisted, hit_something, board_touched, wet, pause, other}) {
    EXPECT_EQ(event_kind_of(word_for(kind)), kind);
  }
}

TEST(WordsWithoutAReading, AreKnownOrSeveral) {
  for (const char* const said : {"stopped", "Slipped", "wet", "hit a staple", "could not go on"}) {
    EXPECT_TRUE(says_why_no_reading(said)) << said;
  }
  EXPECT_FALSE(says_why_no_reading("abc"));
  EXPECT_FALSE(says_why_no_reading(" qwe "));
}

}  // namespace
}  // namespace keenfall::exchange
