#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace keenfall::exchange {
namespace {

using testing::Contains;
using testing::HasSubstr;

trials::EdgeLife life_in(const std::string& lasted, const std::string& failed_by = "") {
  return taken("blade;medium;run;lasted;failed_by\nA;sisal;1;" + lasted + ";" + failed_by + "\n")
      .runs.at(0)
      .edge_lives.at(0);
}

TEST(RunsTables, SayHowLongEachEdgeLasted) {
  const trials::Trial trial = taken(
      "blade,medium,run,lasted,failed_by,test,test_level\n"
      "A,new sisal,1,40,50,slices newsprint cleanly,2\n"
      "A,new sisal,2,30,,slices newsprint cleanly,2\n");

  ASSERT_EQ(trial.runs.size(), 2U);
  EXPECT_EQ(trial.runs[0].edge_lives.at(0),
            (trials::EdgeLife{.test = "slices newsprint cleanly",
                              .lasted_cuts = 40,
                              .failed_by_cuts = 50,
                              .level = 2,
                              .line = 2}));
  EXPECT_FALSE(trial.runs[1].edge_lives.at(0).failed_by_cuts);
  EXPECT_THAT(trial.remarks, Contains("Read as a table with one line a run: 2 runs."));
  EXPECT_THAT(
      trial.remarks,
      Contains("Where failed_by is empty, the edge is taken as never seen to fail: 1 run."));
}

TEST(EdgeLives, AreUnderstoodInWords) {
  for (const char* words : {"40+", ">40", "> 40", "at least 40", "At least 40 cuts", "≥40"}) {
    EXPECT_EQ(life_in(words).lasted_cuts, 40) << words;
    EXPECT_FALSE(life_in(words).failed_by_cuts) << words;
  }
  for (const char* words : {"40-50", "40–50", "40 to 50", "between 40 and 50"}) {
    EXPECT_EQ(life_in(words).lasted_cuts, 40) << words;
    EXPECT_EQ(life_in(words).failed_by_cuts, 50) << words;
  }
  EXPECT_EQ(life_in("<5").lasted_cuts, 0);
  EXPECT_EQ(life_in("<5").failed_by_cuts, 5);
  EXPECT_EQ(life_in("", "5").failed_by_cuts, 5);
  EXPECT_FALSE(life_in("40", "never").failed_by_cuts);
}

TEST(EdgeLives, ThatCannotBeAreRefused) {
  const auto problem = [](const std::string& lasted, const std::string& failed_by) {
    return problem_in("blade;medium;run;lasted;failed_by\nA;sisal;1;" + lasted + ";" + failed_by +
                      "\n");
  };

  EXPECT_THAT(problem("50", "40"),
              HasSubstr("cannot have failed by 40 cuts and still have passed"));
  EXPECT_THAT(problem("40+", "50"), HasSubstr("lasted says “40+” and failed_by says “50”: both"));
  EXPECT_THAT(problem("long", ""), HasSubstr("lasted must say how many cuts the edge lasted"));
  EXPECT_THAT(problem("40", "later"), HasSubstr("failed_by must be the number of cuts"));
}

TEST(EdgeLives, WithoutAWordOnFailingAreAskedAbout) {
  EXPECT_THAT(problem_in("blade,medium,run,lasted\nA,s,1,40\nA,s,2,50\n"),
              HasSubstr("The edge lasted 40 cuts, but whether it then failed, and by when, is not "
                        "said. The same on 1 further line. Accepted: 40+ where"));
}

TEST(EdgeLives, MayStandInALongTableOnceOrOnEveryRow) {
  const trials::Trial trial = taken(
      "blade,medium,run,cuts,reading,lasted,failed_by\nA,s,1,0,104,40,50\nA,s,1,15,131,40,50\n"
      "A,s,2,0,104,,\nA,s,2,,,30+,\n");

  EXPECT_EQ(trial.runs.at(0).edge_lives.size(), 1U);
  EXPECT_EQ(trial.runs.at(0).readings.size(), 2U);
  EXPECT_EQ(trial.runs.at(1).edge_lives.at(0).lasted_cuts, 30);
}

TEST(EdgeLives, AreWrittenAndReadBack) {
  const trials::Trial trial = taken(
      "blade,medium,run,lasted,failed_by,test\nA,s,1,40,50,card\nA,s,2,30,,card\nA,s,3,<5,,card\n");

  const trials::Trial again = taken(long_table_of(trial));

  for (std::size_t i = 0; i < trial.runs.size(); ++i) {
    trials::EdgeLife read_back = again.runs.at(i).edge_lives.at(0);
    read_back.line = trial.runs[i].edge_lives.at(0).line;
    EXPECT_EQ(read_back, trial.runs[i].edge_lives.at(0));
  }
}

TEST(RunsTables, HoldStartAndStopReadings) {
  const trials::Trial trial = taken(
      "blade;medium;run;start reading (gf);stop reading (gf);stop cuts\nA;s;1;104,5;410;127\n");

  const auto& readings = trial.runs.at(0).readings;
  ASSERT_EQ(readings.size(), 2U);
  EXPECT_EQ(readings[0].reading, 104.5);
  EXPECT_EQ(readings[1].cuts, 127);
  EXPECT_EQ(trial.series.at(0).unit, "gf");
}

TEST(RunsTables, HoldReadingsUnderNumbersOfCuts) {
  const trials::Trial trial = taken(
      "Rope\n\nblade,medium,run,0,15 cuts,after 31,note\nA,s,1,104,131 slipped,160 / 165,loud\n");

  const auto& readings = trial.runs.at(0).readings;
  ASSERT_EQ(readings.size(), 4U);
  EXPECT_EQ(readings[1].cuts, 15);
  EXPECT_EQ(readings[3].repeat, 2);
  EXPECT_THAT(trial.runs[0].notes, testing::ElementsAre("131 at 15 cuts: slipped", "loud"));
}

TEST(RunsTables, NameTheirProblemsByLineAndHeader) {
  EXPECT_THAT(problem_in("blade,medium,run,0,15 cuts\nA,s,1,104,ten1\n"),
              HasSubstr("t.csv, line 2, column 15 cuts: “ten1” is neither a reading"));
  EXPECT_THAT(problem_in("blade,medium,run,start_reading,stop_reading\nA,s,1,104,400\n"),
              HasSubstr("There is a stop reading, but stop_cuts does not say"));
  EXPECT_THAT(problem_in("blade,medium,run,0,15\nA,s,1,104,1,5\n"),
              HasSubstr("The row has 6 cells where the header has 5. A decimal comma"));
  EXPECT_THAT(problem_in("blade,medium,run,0,15\nA,s,1,,\n"),
              HasSubstr("The row has no reading and does not say how long the edge lasted."));
}

TEST(TheShape, CanBeSaid) {
  EXPECT_THAT(
      problem_in("blade,medium,run,0,15\nA,s,1,104,131\n", {.shape = TableShape::long_rows}),
      HasSubstr("There is no column cuts."));
}

TEST(LongTables, MayHaveATitleAboveAndUnitsInHeaders) {
  const trials::Trial trial = taken(
      "Trial 2, spring\n\nblade;medium;run;cuts;reading (N);thickness behind edge (µm)\n"
      "A;s;1;0;1,5;380\n");

  EXPECT_EQ(trial.series.at(0).unit, "N");
  EXPECT_EQ(trial.runs.at(0).arm.edge.thickness_behind_edge_mm, 0.38);
  EXPECT_THAT(trial.remarks, Contains("Above the header stands “Trial 2, spring”."));
}

TEST(LongTables, AskWhetherAnAngleIsPerSide) {
  EXPECT_THAT(problem_in("blade,medium,run,cuts,reading,bevel angle (deg)\nA,s,1,0,104,34\n"),
              HasSubstr("“bevel angle (deg)” does not say whether the angle is per side"));
}

TEST(LongTables, ShowAUnitThatSuitsNoKind) {
  EXPECT_THAT(problem_in("blade,medium,run,cuts,reading,unit\nA,s,1,0,104,gv\n"),
              HasSubstr("t.csv, line 2, column unit: “gv” is the unit of no kind of reading"));
}

TEST(RowFilters, LeaveOutRowsAndSaySo) {
  const trials::Trial trial =
      taken("blade,medium,run,cuts,reading,mm\nA,s,1,0,104,1\nA,s,1,0,90,3.0\n",
            {.where = {{"mm", "3"}}});

  EXPECT_EQ(trial.runs.at(0).readings.at(0).reading, 90);
  EXPECT_THAT(trial.remarks, Contains("Only rows with mm=3 were taken; left out: 1 of 2 rows."));
}

TEST(RowFilters, NeedAColumnThatIsThere) {
  EXPECT_THAT(
      problem_in("blade,medium,run,cuts,reading\nA,s,1,0,104\n", {.where = {{"blade", "C"}}}),
      HasSubstr("No row says blade=C, so --where leaves nothing to judge."));
  EXPECT_THAT(problem_in("blade,medium,run,cuts,reading\nA,s,1,0,104\n", {.where = {{"mm", "3"}}}),
              HasSubstr("--where names “mm”, but the table has no such column."));
}

}  // namespace
}  // namespace keenfall::exchange
