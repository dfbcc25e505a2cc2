#include "exchange/table_row.h"

#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

using testing::Contains;
using testing::HasSubstr;

// One row with the five required cells and one more.
std::string with_cell(const std::string& column, const std::string& cell) {
  return "blade,medium,run,cuts,reading," + column + "\nA,sisal,1,0,104," + cell + "\n";
}

TEST(Cells, ThatAreRefusedAreNamedWithFileLineColumnTextAndWhatWouldDo) {
  const auto problems = problems_in("blade,medium,run,Strokes,reading\nA,sisal,1,ten,104\n",
                                    {.columns = {{"cuts", "strokes"}}});

  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].place,
            (base::Place{.file = "t.csv", .line = 2, .column = "Strokes", .found = "ten"}));
  EXPECT_EQ(
      base::in_words(problems[0]),
      "t.csv, line 2, column Strokes: cuts must be a number; “ten” is not a number. Accepted: a "
      "number of zero or more, such as 0 or 15.");
}

TEST(Cells, OfCutsAndReadingsCannotBeNegative) {
  EXPECT_THAT(problem_in(with_rows("A,s,1,-1,104\n")),
              HasSubstr("cuts cannot be negative, not “-1”"));
  EXPECT_THAT(problem_in(with_rows("A,s,1,0,-104\n")), HasSubstr("A reading cannot be negative"));
}

TEST(Cells, OfCutsMayBeFractions) {
  EXPECT_EQ(taken(with_rows("A,s,1,31.5,104\n")).runs.at(0).readings.at(0).cuts, 31.5);
}

TEST(Cells, ThatAreNotFiniteAreRefused) {
  EXPECT_THAT(problem_in(with_rows("A,s,1,0,NaN\n")), HasSubstr("“NaN” is not a finite number"));
  EXPECT_THAT(problem_in(with_rows("A,s,1,inf,1\n")), HasSubstr("“inf” is not a finite number"));
}

TEST(Cells, OfRequiredColumnsCannotBeEmpty) {
  const auto problems = problems_in(with_rows(",,,,104\n"));

  ASSERT_EQ(problems.size(), 4U);
  EXPECT_EQ(base::in_words(problems[1]),
            "t.csv, line 2, column medium: medium is empty; it must hold what was cut, such as new "
            "sisal matting.");
}

TEST(Cells, OfAReadingCanBeEmptyOnlyWhereTheRowTellsSomethingElse) {
  EXPECT_THAT(
      problem_in(with_rows("A,s,1,0,\n")),
      HasSubstr("reading is empty; it must hold the sharpness reading, such as 104. Leave out "
                "rows without one."));
  const auto trial =
      taken("blade,medium,run,cuts,reading,event\nA,s,1,0,104,\nA,s,1,7,,hit a staple\n");
  EXPECT_EQ(trial.runs.at(0).readings.size(), 1U);
  EXPECT_EQ(trial.runs.at(0).events.at(0),
            (trials::Event{trials::EventKind::hit_something, 7, "hit a staple"}));
}

TEST(Cells, OfAnglesAreAbove0AndUpTo45DegreesPerSide) {
  EXPECT_EQ(taken(with_cell("bevel_angle_per_side_deg", "17°")).runs.at(0).arm.edge.bevel_angle,
            trials::PerSideAngle{17});
  EXPECT_THAT(problem_in(with_cell("bevel_angle_per_side_deg", "0")),
              HasSubstr("must be above zero"));
  EXPECT_THAT(
      problem_in(with_cell("apex_angle_per_side_deg", "60")),
      HasSubstr("is an angle per side and looks like an inclusive one (halve it), not “60”"));
}

// ISO 6508-1 gives the Rockwell C scale from 20 to 70.
TEST(Cells, OfHardnessKeepToTheScale) {
  EXPECT_EQ(taken(with_cell("hardness_hrc", "58.5 HRC")).blades.at(0).hardness->reading, 58.5);
  EXPECT_THAT(problem_in(with_cell("hardness_hrc", "19")), HasSubstr("hardness_hrc is too low"));
  EXPECT_THAT(problem_in(with_cell("hardness_hrc", "650")), HasSubstr("hardness_hrc is too high"));
  EXPECT_THAT(problem_in(with_cell("hardness_hrc", "58-60")), HasSubstr("“-60”"));
}

TEST(Cells, OfLengthsRefuseAnotherUnit) {
  EXPECT_EQ(taken(with_cell("cut_length_mm", "100 mm")).runs.at(0).arm.method.cut_length_mm, 100);
  EXPECT_THAT(
      problem_in(with_cell("cut_length_mm", "10 cm")),
      HasSubstr("after the number stands “cm”, which does not belong there: the column is in "
                "mm."));
}

TEST(Cells, OfWholeNumbersRefuseFractionsButTakeTrailingZeros) {
  EXPECT_EQ(taken(with_cell("repeat", "3.0")).runs.at(0).readings.at(0).repeat, 3);
  EXPECT_THAT(problem_in(with_cell("order", "2.5")), HasSubstr("order must be a whole number"));
  EXPECT_THAT(problem_in(with_cell("order", "99999999999")), HasSubstr("order is too high"));
}

TEST(Cells, OfOptionalNumbersMaySayThatTheyAreNotAvailable) {
  EXPECT_EQ(taken(with_cell("repeat", "NA")).runs.at(0).readings.at(0).repeat, std::nullopt);
}

TEST(Cells, HoldAtMostAThousandCharacters) {
  EXPECT_EQ(taken(with_cell("note", std::string(1000, 'x'))).runs.size(), 1U);
  EXPECT_THAT(problem_in(with_cell("note", std::string(1001, 'x'))),
              HasSubstr("more than 1,000 characters"));
}

TEST(Cells, OfStruckReadingsKeepReadingAndReason) {
  const auto trial = taken(with_cell("struck", "thread slipped"));

  EXPECT_EQ(trial.runs.at(0).readings.at(0).struck_reason, "thread slipped");
  EXPECT_EQ(taken(with_cell("struck", "no")).runs.at(0).readings.at(0).struck_reason, std::nullopt);
}

TEST(Rows, ThatStrikeAReadingWithoutOneAreRefused) {
  EXPECT_THAT(problem_in("blade,medium,run,cuts,reading,struck,note\nA,s,1,0,,yes,hm\n"),
              HasSubstr("A reading is struck here, but the row has none."));
}

TEST(Rows, WithTooFewCellsAreRefused) {
  EXPECT_EQ(
      problem_in(with_rows("A,sisal,1,0\n")),
      "t.csv, line 2: The row has 4 cells where the header has 5. An empty cell still needs its "
      "separator.");
}

TEST(Rows, WithTooManyCellsAreRefusedWithTheUsualCause) {
  EXPECT_THAT(problem_in(with_rows("A,sisal,1,0,104,5\n")),
              HasSubstr("The row has 6 cells where the header has 5. A decimal comma"));
}

TEST(Rows, MayEndInFurtherEmptyCells) {
  EXPECT_EQ(taken(with_rows("A,sisal,1,0,104,,\n")).runs.size(), 1U);
}

TEST(Rows, TellNotesDeviationsAndVoidsOfTheirRun) {
  const auto trial = taken(
      "blade,medium,run,cuts,reading,note,deviation,voided\n"
      "A,s,1,0,104,loud,,\nA,s,1,1,110,loud,other board,\nA,s,1,,,,,wrong stone\n");

  EXPECT_THAT(trial.runs.at(0).notes, testing::ElementsAre("loud"));
  EXPECT_THAT(trial.runs.at(0).deviations, Contains("other board"));
  EXPECT_EQ(trial.runs.at(0).voided_reason, "wrong stone");
}

}  // namespace
}  // namespace keenfall::exchange
