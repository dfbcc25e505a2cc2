#include "exchange/run_drafts.h"

#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

using testing::HasSubstr;

std::string with_column(const std::string& column, const std::string& rows) {
  return "blade,medium,run,cuts,reading," + column + "\n" + rows;
}

TEST(Runs, NeedNamesThatAreUniqueOnlyWithinTheirArm) {
  EXPECT_EQ(taken(with_rows("A,sisal,1,0,9\nB,sisal,1,0,9\nA,rope,1,0,9\n")).runs.size(), 3U);
}

TEST(Runs, OfOneNameAreTwoWhenTheirEdgesDiffer) {
  const auto trial = taken(with_column("finish", "A,s,1,0,9,9 um\nA,s,1,0,9,3 um\n"));

  ASSERT_EQ(trial.runs.size(), 2U);
  EXPECT_EQ(trials::arms_of(trial).size(), 2U);
}

TEST(Runs, OfOneNameAreTwoWhenTheirSpecimensDiffer) {
  const auto trial = taken(with_column("specimen", "A,s,1,0,9,I\nA,s,1,0,9,II\n"));

  ASSERT_EQ(trial.runs.size(), 2U);
  EXPECT_EQ(trial.runs[1].specimen, "II");
  EXPECT_EQ(trials::arms_of(trial).size(), 1U);
}

TEST(Runs, NeedTheirFactsOnlyInOneRow) {
  const auto trial = taken(
      "blade,medium,run,cuts,reading,finish,block,date\n"
      "A,s,1,0,9,,,\nA,s,1,1,9,9 um,,\nA,s,1,3,9,,b1,2024-05-01\n");

  ASSERT_EQ(trial.runs.size(), 1U);
  EXPECT_EQ(trial.runs[0].arm.edge.finish, "9 um");
  EXPECT_EQ(trial.runs[0].block, "b1");
  EXPECT_EQ(trial.runs[0].date, "2024-05-01");
  EXPECT_EQ(trial.runs[0].readings.size(), 3U);
}

TEST(Runs, AreNotGuessedWhereEmptyCellsFitTwo) {
  const auto problems =
      problems_in(with_column("finish", "A,s,1,0,9,9 um\nA,s,1,0,9,3 um\nA,s,1,1,9,\n"));

  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].place.line, 4U);
  EXPECT_THAT(problems[0].sentence, HasSubstr("rows with empty cells fit several runs"));
}

TEST(Runs, CannotHaveTwoBlocksDatesOrLots) {
  for (const char* column : {"block", "date", "order", "medium_lot", "operator"}) {
    const auto problems =
        problems_in(with_column(column, "A,s,1,0,9,1\nA,s,1,1,9,2\nA,s,1,3,9,2\n"));

    ASSERT_EQ(problems.size(), 1U) << column;
    EXPECT_EQ(problems[0].kind, base::ProblemKind::conflicting);
    EXPECT_THAT(
        base::in_words(problems[0]),
        HasSubstr("t.csv, line 3, column " + std::string(column) +
                  ": Run “1” of blade “A” in “s” has " + column + " “1” in line 2 and “2” here."));
  }
}

TEST(Runs, StandInTheOrderInWhichTheyBegin) {
  const auto trial = taken(with_rows("B,s,2,0,9\nA,s,1,0,9\nB,s,2,1,9\n"));

  ASSERT_EQ(trial.runs.size(), 2U);
  EXPECT_EQ(trial.runs[0].arm.blade, "B");
}

TEST(Runs, KnowAMethodByAnyOfItsWords) {
  const auto trial = taken(with_column("method", "A,s,1,0,9,Push\nA,s,1,1,9,push cut\n"));

  ASSERT_EQ(trial.runs.size(), 1U);
  EXPECT_EQ(trial.runs[0].arm.method, (trials::CutMethod{.motion = trials::Motion::push}));
}

TEST(Runs, KeepAMethodNobodyKnowsAsItIsWritten) {
  const auto trial = taken(with_column("method", "A,s,1,0,9,rocking\n"));

  EXPECT_EQ(trial.runs.at(0).arm.method.as_written, "rocking");
}

}  // namespace
}  // namespace keenfall::exchange
