#include "exchange/good_rows.h"
#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::exchange {
namespace {

using testing::Contains;
using testing::HasSubstr;

// Two runs of one blade, one of another.
std::string header() {
  return "blade;A;;B\n"
         "medium;new sisal;;\n"
         "run;1;2;1\n";
}

std::string wide(const std::string& body) { return header() + body; }

std::vector<double> readings_of(const trials::Run& run) {
  std::vector<double> readings;
  for (const trials::Reading& reading : run.readings) readings.push_back(reading.reading);
  return readings;
}

TEST(WideTables, HaveCutsDownAndRunsAcross) {
  const trials::Trial trial = taken(wide("0;104;99;101\n15;131;120;140\n"));

  ASSERT_EQ(trial.runs.size(), 3U);
  EXPECT_EQ(trial.runs[1].name, "2");
  EXPECT_EQ(trial.runs[1].arm.blade, "A");
  EXPECT_EQ(readings_of(trial.runs[1]), (std::vector<double>{99, 120}));
  EXPECT_EQ(trial.runs[2].readings.at(1).cuts, 15);
  EXPECT_THAT(trial.remarks, Contains("Read as a wide table: cuts down, 3 runs across."));
}

TEST(WideTables, SayWhereAnEmptyHeaderCellHoldsItsLeftNeighbour) {
  EXPECT_THAT(taken(wide("0;104;99;101\n")).remarks,
              Contains("In the header, an empty cell holds what stands to its left (rows: blade, "
                       "medium)."));
}

TEST(WideTables, GiveTheTrialOfTheLongTable) {
  trials::Trial from_wide = taken(
      "Paper tally, spring;;;\n;;;\nknife;A;;B\nsteel;C75S;;X90CrMoV18\n"
      "medium;new sisal;;\nrun;1;;1\nstation;heel;tip;heel\nunit;gf;;\n"
      "bevel angle inclusive (deg);34;;34\nthickness behind edge [µm];380;;\ncuts;;;\n"
      "0;104,5;99;101\n15;131;120;140\n;132;;\n");
  trials::Trial from_long = taken(
      "blade,medium,run,cuts,reading,steel,station,unit,bevel_angle_per_side_deg,"
      "thickness_behind_edge_mm\n"
      "A,new sisal,1,0,104.5,C75S,heel,gf,17,0.38\nA,new sisal,1,0,99,C75S,tip,gf,17,0.38\n"
      "B,new sisal,1,0,101,X90CrMoV18,heel,gf,17,0.38\n"
      "A,new sisal,1,15,131,C75S,heel,gf,17,0.38\nA,new sisal,1,15,120,C75S,tip,gf,17,0.38\n"
      "B,new sisal,1,15,140,X90CrMoV18,heel,gf,17,0.38\n"
      "A,new sisal,1,15,132,C75S,heel,gf,17,0.38\n");
  for (trials::Trial* trial : {&from_wide, &from_long}) {
    trial->remarks.clear();
    for (trials::Run& run : trial->runs) {
      for (trials::Reading& reading : run.readings) reading.line = 0;
    }
  }

  EXPECT_TRUE(from_wide == from_long);
}

TEST(WideTables, KeepWhatStandsBesideANumber) {
  const trials::Trial trial = taken(
      wide("0;104;99;101\n15;131 slipped;240 (struck: hit a staple);~140*\n31;-;n/a;stopped\n"));

  EXPECT_EQ(trial.runs[0].readings.at(1).reading, 131);
  EXPECT_FALSE(trial.runs[0].readings.at(1).struck_reason);
  EXPECT_THAT(trial.runs[0].notes, Contains("131 at 15 cuts: slipped"));
  EXPECT_EQ(trial.runs[1].readings.at(1).struck_reason, "hit a staple");
  EXPECT_THAT(trial.runs[2].notes, Contains("140 at 15 cuts: about, marked *"));
  EXPECT_EQ(trial.runs[2].events.at(0).as_written, "stopped");
  EXPECT_EQ(trial.runs[2].events.at(0).cuts, 31);
  EXPECT_EQ(trial.runs[0].readings.size(), 2U);
}

TEST(WideTables, TakeAReadingWithAQuestionMarkAsDoubtful) {
  const trials::Trial trial =
      taken(wide("0;104;99;101\n15;118?;120 gf?;140 (?)\n31;130 ? slipped;131 burr?;~150?\n"));

  for (const trials::Run& run : trial.runs) {
    EXPECT_EQ(run.readings.at(1).doubtful_reason, "a question mark beside it");
    EXPECT_FALSE(run.readings.at(1).struck_reason);
    EXPECT_FALSE(run.readings.at(0).doubtful_reason);
  }
  EXPECT_TRUE(trial.runs[0].readings.at(2).doubtful_reason);
  EXPECT_THAT(trial.runs[0].notes, Contains("130 at 31 cuts: slipped"));
  EXPECT_FALSE(trial.runs[1].readings.at(2).doubtful_reason);  // the burr is in question
  EXPECT_TRUE(trial.runs[2].readings.at(2).doubtful_reason);
}

TEST(WideTables, TakeTheReasonForADoubtFromTheCell) {
  const trials::Trial trial = taken(wide("0;104 / 99? / 101;99;101 doubtful: slack thread\n"));

  EXPECT_FALSE(trial.runs[0].readings.at(0).doubtful_reason);
  EXPECT_EQ(trial.runs[0].readings.at(1).doubtful_reason, "a question mark beside it");
  EXPECT_EQ(trial.runs[2].readings.at(0).doubtful_reason, "slack thread");
  EXPECT_THAT(trial.remarks,
              Contains("Doubtful, because the cell says so, and counted: 2 readings."));
}

TEST(WideTables, MayDoubtAWholeColumn) {
  const trials::Trial trial = taken(wide("doubtful;;scale slow;no\n0;104;99;101\n"));

  EXPECT_FALSE(trial.runs[0].readings.at(0).doubtful_reason);
  EXPECT_EQ(trial.runs[1].readings.at(0).doubtful_reason, "scale slow");
  EXPECT_FALSE(trial.runs[2].readings.at(0).doubtful_reason);
}

TEST(WideTables, NameAReadingThatIsNotWrittenInDigits) {
  const auto problem = [](const std::string& cell) {
    return problem_in(wide("0;104;99;101\n15;" + cell + ";99;101,5\n"));
  };

  EXPECT_THAT(problem("?"), HasSubstr("A question mark alone is no reading"));
  EXPECT_THAT(problem("(?)"), HasSubstr("A question mark alone is no reading"));
  EXPECT_THAT(problem("ten"), HasSubstr("“ten” is a number in words"));
  EXPECT_THAT(problem("1l8"), HasSubstr("letters that look like digits"));
  EXPECT_THAT(problem("11O"), HasSubstr("“11O” has letters that look like digits"));
  EXPECT_THAT(problem("1O0"), HasSubstr("“1O0” has letters that look like digits"));
  EXPECT_THAT(problem("lO"), HasSubstr("“lO” has letters that look like digits"));
  EXPECT_THAT(problem("12,,5"), HasSubstr("The reading is not clear"));
}

TEST(WideTables, SayHowNotesAndRepeatsWereRead) {
  const auto remarks =
      taken(wide("0;104 / 101 / 99;99 burr?;101\n15;240 struck;120;140\n")).remarks;

  EXPECT_THAT(remarks,
              Contains("Cells with several numbers, as in “104 / 101 / 99”, are read as repeats at "
                       "one checkpoint."));
  EXPECT_THAT(
      remarks,
      Contains("Words beside 1 reading, as in “99 burr?”, are kept as notes; those readings "
               "count."));
  EXPECT_THAT(remarks, Contains("Struck out, because the cell says so: 1 reading."));
}

TEST(WideTables, NumberTheRepeatsOfACell) {
  const trials::Trial trial = taken(wide("0;104, 101, 99;99;101\n"));

  ASSERT_EQ(trial.runs[0].readings.size(), 3U);
  EXPECT_EQ(trial.runs[0].readings[2].repeat, 3);
  EXPECT_EQ(trial.runs[0].readings[2].reading, 99);
}

TEST(WideTables, AskBackAboutAWordThatIsNotKnown) {
  EXPECT_THAT(problem_in(wide("0;104;99;101\n15;abc;99;101\n")),
              HasSubstr("t.csv, line 5, column B: “abc” cannot be read"));

  const trials::Trial trial = taken(wide("0;104;99;101\n15;(abc);stopped;101\n"));
  EXPECT_EQ(trial.runs[0].events.at(0).as_written, "abc");
  EXPECT_THAT(trial.remarks,
              Contains("Words without a reading in 2 cells, as in “(abc)”, are kept as what "
                       "happened there."));
}

TEST(WideTables, RefuseFewerCutsThanNone) {
  for (const std::string label : {"-3", "\u22123", "-3 cuts"}) {
    EXPECT_THAT(problem_in(wide("0;104;99;101\n" + label + ";131;120;140\n")),
                HasSubstr("is not a number of cuts"));
  }
}

TEST(WideTables, NeverTakeACellByHalf) {
  const auto problem = [](const std::string& cell) {
    return problem_in(wide("0;" + cell + ";99;101,5\n"));
  };

  EXPECT_THAT(problem("131 128"), HasSubstr("t.csv, line 4, column B: “131 128” may be several"));
  EXPECT_THAT(problem("131 then 128"), HasSubstr("holds a second number"));
  EXPECT_THAT(problem("l31"), HasSubstr("letters that look like digits"));
  EXPECT_THAT(problem("x"), HasSubstr("is neither a reading nor a word"));
  EXPECT_THAT(problem(">400"), HasSubstr("is a bound and not a reading"));
  EXPECT_THAT(problem("131.5"), HasSubstr("has a decimal point, but this table writes decimals"));
  EXPECT_THAT(problem("131 mm"), HasSubstr("line 4, column B: The kind of reading is not named"));
}

TEST(WideTables, NameTheRowThatIsMissing) {
  EXPECT_THAT(
      problem_in("blade;A;B\nrun;1;1\n0;104;99\n"),
      HasSubstr("Read as a wide table (cuts down, runs across), but no row is named medium."));
}

TEST(WideTables, NameTheColumnWithoutABlade) {
  EXPECT_THAT(problem_in("blade;;B\nmedium;new sisal;\nrun;1;1\n0;104;99\n"),
              HasSubstr("t.csv, line 1, column B: blade is empty above a column of readings"));
}

TEST(WideTables, RefuseCutsThatAreNoNumber) {
  EXPECT_THAT(problem_in(wide("0;104;99;101\nl5;131;120;140\n")),
              HasSubstr("t.csv, line 5, column A: Here stands how many cuts were made, and “l5”"));
}

TEST(WideTables, SayThatARowWasNotUnderstood) {
  EXPECT_THAT(taken(wide("0;104;99;101\nmean;104;99;101\n")).remarks,
              Contains("Not used, because not understood: the rows “mean”."));
}

TEST(WideTables, NoticeADecimalCommaThatCutsACell) {
  const std::string problem = problem_in("blade,A,B\nmedium,s,s\nrun,1,1\n0,104,5,99\n");

  EXPECT_THAT(problem, HasSubstr("t.csv, line 4, column D: Column D has no run name"));
  EXPECT_THAT(problem, HasSubstr("a decimal comma, or a comma in a text, cuts a cell in two"));
}

TEST(WideTables, AskForTheRunOfAColumnOfReadingsThatNamesNone) {
  const std::string text = wide("0;104;99;101;98\n15;131;120;140;\n31;160;150;170;155\n");

  EXPECT_THAT(problems_in(text), testing::SizeIs(1));
  EXPECT_THAT(problem_in(text),
              HasSubstr("t.csv, line 4, column E: Column E has no run name and no blade. Write the "
                        "run in row 3 (run) and the blade in row 1 (blade), where it is not the "
                        "one to its left; or clear the column."));
  const auto rows = take_good_rows_of_text(text, "t.csv", {});
  ASSERT_TRUE(rows.has_value());
  EXPECT_THAT(rows->left_out.parts, testing::ElementsAre(TablePart{0, 0, 5}));
  EXPECT_EQ(rows->trial.runs.size(), 3U);
}

TEST(WideTables, TakeVoidRunsAndHowLongTheyLasted) {
  const trials::Trial trial =
      taken(wide("0;104;99;101\nvoided;;burr left;\nlasted;40;;30+\nfailed by;50;;\n"));

  EXPECT_EQ(trial.runs[1].voided_reason, "burr left");
  EXPECT_FALSE(trial.runs[2].voided_reason);
  ASSERT_EQ(trial.runs[0].edge_lives.size(), 1U);
  EXPECT_EQ(trial.runs[0].edge_lives[0].failed_by_cuts, 50);
  EXPECT_EQ(trial.runs[2].edge_lives.at(0).failed_by_cuts, std::nullopt);
}

TEST(WideTables, MayLeaveOutColumns) {
  const trials::Trial trial = taken(wide("0;104;99;101\n"), {.where = {{"blade", "B"}}});

  EXPECT_EQ(trial.runs.size(), 1U);
  EXPECT_THAT(trial.remarks, Contains("Left out by --where: 2 columns."));
}

TEST(TablesOfTwoShapes, AreAskedAbout) {
  EXPECT_THAT(problem_in("blade;medium;run;0;15\nmedium;A;B;104;131\nrun;1;1;1;1\n0;3;4;5;6\n"),
              HasSubstr("Say which with --shape. Accepted: --shape=long"));
}

}  // namespace
}  // namespace keenfall::exchange
