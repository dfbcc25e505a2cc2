#include "exchange/reading_order.h"

#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

using testing::HasSubstr;

std::string with_repeats(const std::string& rows) {
  return "blade,medium,run,cuts,reading,repeat,struck\n" + rows;
}

TEST(Readings, ThatGoBackInCutsAreTakenForASecondRun) {
  const auto problems = problems_in(with_rows(
      "A,s,3,0,9\nA,s,3,63,20\nA,s,3,0,9\nA,s,3,63,20\nA,s,3,0,9\nB,s,1,7,9\nB,s,1,3,9\n"));

  ASSERT_EQ(problems.size(), 2U);
  EXPECT_EQ(base::in_words(problems[0]),
            "t.csv, line 4, column cuts: Run 3 of blade A goes back from 63 to 0 cuts. Is this a "
            "second run? Give it its own name; or sort the rows by cuts. Accepted: cuts that stay "
            "equal or rise within a run.");
  EXPECT_EQ(problems[1].place.line, 8U);
}

TEST(Readings, MayStartAgainForEachRepeatOrStation) {
  const auto trial =
      taken(with_repeats("A,s,1,0,9,1,\nA,s,1,7,20,1,\nA,s,1,0,10,2,\nA,s,1,7,21,2,\n"));

  EXPECT_THAT(trial.runs.at(0).readings,
              testing::ElementsAre(testing::Field(&trials::Reading::reading, 9),
                                   testing::Field(&trials::Reading::reading, 10),
                                   testing::Field(&trials::Reading::reading, 20),
                                   testing::Field(&trials::Reading::reading, 21)));
}

TEST(Readings, WithoutRepeatNumbersAtOneCheckpointAreRepeats) {
  EXPECT_EQ(taken(with_rows("A,s,1,0,9\nA,s,1,0,9\nA,s,1,0,10\n")).runs.at(0).readings.size(), 3U);
}

TEST(Readings, OfOneRepeatNumberCannotStandTwice) {
  const auto problems = problems_in(with_repeats("A,s,1,0,9,1,\nA,s,1,0,10,2,\nA,s,1,0,11,1,\n"));

  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].place.line, 4U);
  EXPECT_THAT(problems[0].sentence,
              HasSubstr("Repeat 1 at 0 cuts of run 1 of blade A stands already in line 2."));
}

TEST(Readings, MayReplaceAStruckOneOfTheSameNumber) {
  EXPECT_EQ(taken(with_repeats("A,s,1,0,9,1,slipped\nA,s,1,0,11,1,\n")).runs.at(0).readings.size(),
            2U);
}

}  // namespace
}  // namespace keenfall::exchange
