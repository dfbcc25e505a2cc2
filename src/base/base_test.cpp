#include "base/begun_large.h"
#include "base/execution.h"
#include "base/plain_number.h"
#include "base/require.h"
#include "base/result.h"
#include "base/shell_word.h"
#include "base/unseen_character.h"

#include <gtest/gtest.h>

#include <atomic>
#include <stdexcept>

namespace keenfall::base {
namespace {

TEST(Problems, AreWrittenAsPlaceSentenceAndWhatWouldBeAccepted) {
  const Problem problem{.kind = ProblemKind::bad_value,
                        .sentence = "cuts must be a number of zero or more, not \"ten\".",
                        .place = {.file = "t.csv", .line = 7, .column = "cuts", .found = "ten"},
                        .accepted = "0, 15, 31.5"};

  EXPECT_EQ(in_words(problem),
            "t.csv, line 7, column cuts: cuts must be a number of zero or more, not \"ten\". "
            "Accepted: 0, 15, 31.5.");
}

TEST(Problems, WithoutAPlaceAreJustTheSentence) {
  EXPECT_EQ(in_words({.sentence = "Nothing to judge."}), "Nothing to judge.");
  EXPECT_EQ(in_words({.sentence = "the unit is not known"}), "the unit is not known.");
}

// U+00A0, U+200D (joins letters in several scripts) and letters that are read from the right stay.
TEST(UnseenCharacters, AreControlsAndMarksOfDirection) {
  for (const char* control : {"\x01", "\n", "\x7F", "\xC2\x80", "\xC2\x9F"}) {
    EXPECT_TRUE(is_control(control)) << control;
  }
  for (const char* mark : {"\xD8\x9C",
                           "\xE2\x80\x8E",
                           "\xE2\x80\x8F",
                           "\xE2\x80\xAA",
                           "\xE2\x80\xAE",
                           "\xE2\x81\xA6",
                           "\xE2\x81\xA9"}) {
    EXPECT_TRUE(turns_direction(mark)) << mark;
  }
  for (const char* seen :
       {"", "a", " ", "\xC2\xA0", "\xE2\x80\x8D", "\xE2\x80\xAF", "\xE2\x81\xA5", "\xD7\x90"}) {
    EXPECT_FALSE(is_control(seen) || turns_direction(seen)) << seen;
  }
}

// Each was given to dash as "printf %s WORD", which said the text again.
TEST(ShellWords, StandAsTheyAreOrInQuotes) {
  for (const char* plain : {"bench.keen", "/tmp/a-b_c/1.keen", "müller.keen", "--run=2"}) {
    EXPECT_EQ(shell_word(plain), plain);
  }
  EXPECT_EQ(shell_word("my bench.keen"), "'my bench.keen'");
  EXPECT_EQ(shell_word("R.'s $5 *"), "'R.'\\''s $5 *'");
  EXPECT_EQ(shell_word("~/a"), "'~/a'");
  EXPECT_EQ(shell_word(""), "''");
}

TEST(Problems, OfASpreadsheetNameItsCell) {
  EXPECT_EQ(in_words({.sentence = "Empty.",
                      .place = {.file = "t.ods, sheet Trial 2",
                                .line = 7,
                                .column = "cuts",
                                .cell = "cell C7"}}),
            "t.ods, sheet Trial 2, cell C7: Empty.");
}

TEST(Numbers, AreWrittenShortestRoundedOrToAFewFigures) {
  EXPECT_EQ(plain_number(0.38), "0.38");
  EXPECT_EQ(with_decimals(1.005, 1), "1.0");
  EXPECT_EQ(with_figures(104.37, 3), "104");
  EXPECT_EQ(with_figures(5104.37, 2), "5100");
  EXPECT_EQ(with_figures(0.012345, 2), "0.012");
  EXPECT_EQ(with_figures(0, 3), "0");
}

TEST(Require, ThrowsALogicErrorThatNamesThePromise) {
  EXPECT_THROW(require(false, "runs must not be empty"), std::logic_error);
  EXPECT_NO_THROW(require(true, "runs must not be empty"));
}

TEST(Executors, RunEveryTaskOnceOnOneThreadOrMany) {
  for (const unsigned thread_count : {1U, 2U, 5U}) {
    std::atomic<int> ran{0};
    const std::vector<Task> tasks(13, [&ran] { ++ran; });

    threads(thread_count)(tasks);

    EXPECT_EQ(ran, 13);
  }
}

TEST(Executors, RethrowAFailureAfterTheOtherTasksHaveEnded) {
  std::atomic<int> ran{0};
  std::vector<Task> tasks(6, [&ran] { ++ran; });
  tasks[2] = [] { throw std::runtime_error("broken"); };

  EXPECT_THROW(threads(2)(tasks), std::runtime_error);

  EXPECT_EQ(ran, 5);
}

TEST(WordsThatBeginASentence, StartWithALargeLetterWhereThereIsOne) {
  EXPECT_EQ(begun_large("strokes are counted"), "Strokes are counted");
  EXPECT_EQ(begun_large("17° per side"), "17° per side");
  EXPECT_EQ(begun_large("\xC3\xA9mond\xC3\xA9"), "\xC3\xA9mond\xC3\xA9");
  EXPECT_EQ(begun_large(""), "");
}

}  // namespace
}  // namespace keenfall::base
