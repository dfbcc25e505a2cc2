#include "exchange/table_survey.h"
#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::exchange {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

TableSurvey survey(const std::string& text) {
  const TableInHand table{.name = "t.csv", .bytes = text};
  return survey_tables({&table, 1}, {});
}

std::vector<std::string> noticed_in(const std::string& text) {
  std::vector<std::string> sentences;
  for (const PlacedProblem& placed : survey(text).noticed) {
    sentences.push_back(placed.problem.sentence);
  }
  return sentences;
}

// One run, with readings at 0, 1, 3, 7 ... cuts.
std::string run_of(const std::vector<std::string>& readings) {
  std::string text = "blade;A\nmedium;rope\nrun;1\n";
  int cuts = 0;
  for (const std::string& reading : readings) {
    text += std::to_string(cuts) + ";" + reading + "\n";
    cuts = cuts * 2 + 1;
  }
  return text;
}

TEST(LikelySlips, AreNamedBesideTheirCellAndTaken) {
  const TableSurvey read = survey(run_of({"104", "131", "150", "1500", "160", "175"}));

  ASSERT_THAT(read.noticed, SizeIs(1));
  EXPECT_EQ(read.noticed[0].problem.sentence,
            "1500 is about ten times its neighbours in the run: a slip of the decimal point? It is "
            "taken as it stands.");
  EXPECT_EQ(read.noticed[0].row, 6U);
  EXPECT_EQ(read.noticed[0].column, 1U);
  EXPECT_THAT(read.problems, IsEmpty());
  EXPECT_EQ(read.good->trial.runs.at(0).readings.size(), 6U);
}

TEST(LikelySlips, AreFoundAtTheEndsOfARun) {
  EXPECT_THAT(noticed_in(run_of({"104", "131", "150", "15000"})),
              ElementsAre(HasSubstr("15000 is about a hundred times its neighbours")));
  EXPECT_THAT(noticed_in(run_of({"104", "131", "150", "16"})),
              ElementsAre(HasSubstr("16 is about a tenth of its neighbours")));
  EXPECT_THAT(noticed_in(run_of({"1040", "131", "150", "160"})),
              ElementsAre(HasSubstr("1040 is about 6.9 times its neighbours")));
  EXPECT_THAT(noticed_in(run_of({"150", "15000"})), ElementsAre(HasSubstr("15000 is")));
}

TEST(LikelySlips, AreFoundAmongRepeats) {
  EXPECT_THAT(noticed_in(run_of({"104 / 99 / 101", "131 / 1280 / 133", "150"})),
              ElementsAre(HasSubstr("1280 is about")));
}

TEST(LikelySlips, AreNotTheStepsOfAnEdgeThatBlunts) {
  EXPECT_THAT(noticed_in(run_of({"30", "60", "150", "400", "900"})), IsEmpty());
  EXPECT_THAT(noticed_in(run_of({"104", "131", "150", "900"})), IsEmpty());
  EXPECT_THAT(noticed_in(run_of({"104", "131", "1500 struck", "160"})), IsEmpty());
}

TEST(LikelySlips, AreRemarksOnARowOfALongTable) {
  const std::string text =
      with_rows("A,s,1,0,104\nA,s,1,1,131\nA,s,1,3,1400\nA,s,1,7,160\nB,s,1,0,104\nB,s,1,1,131\n");

  EXPECT_THAT(taken(text).remarks, Contains(HasSubstr("Line 4: 1400 is about ten times")));
  const TableSurvey read = survey(text);
  ASSERT_THAT(read.noticed, SizeIs(1));
  EXPECT_EQ(read.noticed[0].row, 3U);
  EXPECT_EQ(read.noticed[0].column, 4U);
}

TEST(RowsThatStandTwice, AreNamedAndTaken) {
  const std::string text =
      with_rows("A,s,1,0,104\nA,s,1,1,131\nA,s,1,1,131\nA,s,1,3,140\nA,s,1,7,160\n");

  EXPECT_THAT(noticed_in(text),
              ElementsAre("The same reading at 1 cut of this run stands in line 3 already. Both "
                          "are taken, as two readings; if the row was copied by mistake, remove "
                          "one."));
  EXPECT_EQ(taken(text).runs.at(0).readings.size(), 5U);
}

TEST(RowsThatStandTwice, AreNamedWhereAllOfARunDo) {
  EXPECT_THAT(noticed_in(with_rows("A,s,1,0,104\nA,s,1,0,104\nA,s,1,1,131\nA,s,1,1,131\n")),
              SizeIs(2));
}

TEST(RowsThatStandTwice, AreNoneWhereRepeatsAreUsual) {
  EXPECT_THAT(noticed_in(with_rows("A,s,1,0,104\nA,s,1,0,104\nA,s,1,1,131\nA,s,1,1,133\n")),
              IsEmpty());
  EXPECT_THAT(noticed_in(with_columns(
                  "repeat", "A,s,1,0,104,1\nA,s,1,0,104,2\nA,s,1,1,131,1\nA,s,1,3,140,1\n")),
              IsEmpty());
}

TEST(BareFinishes, AreAskedAboutOnceAndKept) {
  const std::string text =
      "blade;A;;B\nfinish;1000;;1000\nmedium;rope;;\nrun;1;2;1\n0;104;101;99\n1;131;128;120\n";
  const TableSurvey read = survey(text);

  ASSERT_THAT(read.noticed, SizeIs(1));
  EXPECT_EQ(read.noticed[0].row, 1U);
  EXPECT_EQ(read.noticed[0].column, 1U);
  EXPECT_THAT(read.noticed[0].problem.sentence,
              HasSubstr("“1000” does not say of which grit system it is"));
  EXPECT_EQ(read.good->trial.runs.at(0).arm.edge.finish, "1000");
  EXPECT_THAT(noticed_in(with_columns("finish", "A,s,1,0,104,JIS 1000\nA,s,1,1,131,\n")),
              IsEmpty());
}

}  // namespace
}  // namespace keenfall::exchange
