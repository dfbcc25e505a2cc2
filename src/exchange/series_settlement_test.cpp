#include "exchange/series_settlement.h"

#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

using testing::Contains;
using testing::HasSubstr;

const trials::ReadingKind kWear = {.name = "flank_wear",
                                   .words = "flank wear",
                                   .unit = "mm",
                                   .zero = trials::ZeroReading::refused};

TEST(Kinds, AreThreadPushWhereNothingSaysOtherwiseAndThatIsRemarked) {
  const auto trial = taken(with_rows("A,s,1,0,104\n"));

  EXPECT_EQ(trial.series.at(0).kind.name, "thread_push");
  EXPECT_EQ(trial.series.at(0).unit, "gf");
  EXPECT_THAT(trial.remarks,
              Contains("No kind of reading is named: taken as thread push readings."));
  EXPECT_THAT(trial.remarks,
              Contains("No unit is given for the thread push reading: taken as gf."));
}

TEST(Kinds, AreNotGuessedFromAUnitThatIsNoForce) {
  const auto problems = problems_in(with_columns("unit", "A,s,1,0,7,mm\nA,s,1,1,8,mm\n"));

  ASSERT_EQ(problems.size(), 1U);
  EXPECT_THAT(
      base::in_words(problems[0]),
      HasSubstr("Say it for the whole table with --kind, or in a column kind; in mm are read: "
                "cord_draw, card_bite"));
  EXPECT_THAT(problems[0].sentence, HasSubstr("The same on 1 further line."));
}

TEST(Kinds, AreTheOnlyOneDefined) {
  const auto trial = taken(with_rows("A,s,1,0,0.1\n"), {.defined_kinds = {kWear}});

  EXPECT_EQ(trial.series.at(0).kind, kWear);
}

TEST(Kinds, AreAskedForWhereSeveralAreDefined) {
  trials::ReadingKind other = kWear;
  other.name = "other";

  EXPECT_THAT(problem_in(with_rows("A,s,1,0,0.1\n"), {.defined_kinds = {kWear, other}}),
              HasSubstr("The kind of reading is not named."));
  EXPECT_EQ(
      taken(with_rows("A,s,1,0,0.1\n"), {.defined_kinds = {kWear, other}, .default_kind = "other"})
          .series.at(0)
          .kind.name,
      "other");
}

TEST(Kinds, SaidForTheWholeTableMustBeKnown) {
  EXPECT_THAT(problem_in(with_rows("A,s,1,0,1\n"), {.default_kind = "moon"}),
              HasSubstr("column --kind: “moon” is no kind of reading known here."));
}

TEST(Kinds, ThatAreUnknownAreToldOnceWithThoseThereAre) {
  const auto problems = problems_in(with_columns("kind", "A,s,1,0,7,push\nA,s,1,1,8,push\n"));

  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].kind, base::ProblemKind::unknown_name);
  EXPECT_THAT(problems[0].accepted, HasSubstr("thread_push, cord_draw"));
}

TEST(Kinds, ForCurvesRefuseAZero) {
  EXPECT_THAT(problem_in(with_rows("A,s,1,0,0\n")),
              HasSubstr("A thread push reading of zero cannot be"));
  EXPECT_THAT(problem_in(with_rows("A,s,1,0,0\n"), {.defined_kinds = {kWear}}),
              HasSubstr("zero=below:"));
}

TEST(Kinds, MayTakeAZeroForLessThanTheSmallestStep) {
  const auto kind = parse_kind_definition("flank_wear:mm:lower:zero=below:0.01");

  const auto trial = taken(with_rows("A,s,1,0,0\n"), {.defined_kinds = {*kind}});

  EXPECT_EQ(trial.runs.at(0).readings.at(0).reading, 0);
  EXPECT_EQ(trial.series.at(0).kind.resolution, 0.01);
}

TEST(Kinds, OfEvidenceTakeZerosUpToTheirLargest) {
  EXPECT_EQ(taken(with_columns("kind", "A,s,1,0,0,glint\n")).runs.size(), 1U);
  EXPECT_THAT(problem_in(with_columns("kind", "A,s,1,0,10,pass ladder\n")),
              HasSubstr("A pass ladder rung of “10” is above the largest possible, 9 rung."));
}

TEST(Kinds, AreKeptApart) {
  const auto trial =
      taken(with_columns("kind,unit", "A,s,1,0,104,thread_push,gf\nA,s,1,0,7,cord_draw,mm\n"));

  ASSERT_EQ(trial.series.size(), 2U);
  EXPECT_EQ(trial.runs.at(0).readings.at(1).series, 1U);
}

// NIST SP 811, appendix B.8: 1 lbf = 4.448 222 N, 1 gf = 9.806 65e-3 N.
TEST(Units, OfOneKindAreConvertedToTheFirstMet) {
  const auto trial =
      taken(with_columns("unit", "A,s,1,0,4.448222,N\nA,s,1,1,1,lbf\nA,s,1,3,100,gf\n"));

  ASSERT_EQ(trial.series.size(), 1U);
  EXPECT_EQ(trial.series[0].unit, "N");
  EXPECT_NEAR(trial.runs.at(0).readings.at(1).reading, 4.448222, 1e-6);
  EXPECT_NEAR(trial.runs.at(0).readings.at(2).reading, 0.980665, 1e-12);
  EXPECT_THAT(trial.remarks,
              Contains("Readings of thread_push in lbf were converted to N, the unit met first."));
}

TEST(Units, MayBeGluedToTheReading) {
  const auto trial = taken(with_rows("A,s,1,0,104 gf\nA,s,1,1,1.5N\n"));

  EXPECT_EQ(trial.series.at(0).unit, "gf");
  EXPECT_NEAR(trial.runs.at(0).readings.at(1).reading, 152.957, 1e-3);
}

TEST(Units, OfAMassAreTheWeightItHas) {
  EXPECT_EQ(taken(with_columns("unit", "A,s,1,0,104,g\n")).series.at(0).unit, "gf");
}

TEST(Units, OfAnotherDimensionAreRefused) {
  EXPECT_THAT(
      problem_in(with_columns("kind,unit", "A,s,1,0,7,thread_push,mm\n")),
      HasSubstr("column unit: A thread push reading cannot be in “mm”. Accepted: gf or a unit "
                "that converts to it."));
  EXPECT_THAT(problem_in(with_columns("kind", "A,s,1,0,7 mm,thread_push\n")),
              HasSubstr("column reading: A thread push reading cannot be in “mm”."));
}

TEST(Units, ThatContradictTheirColumnAreRefused) {
  EXPECT_THAT(problem_in(with_columns("unit", "A,s,1,0,1 N,gf\n")),
              HasSubstr("The reading is in “N”, but the unit column says “gf”."));
}

TEST(Units, LeftEmptyAreThoseOfTheRunsOtherRows) {
  const auto trial = taken(with_columns("unit", "A,s,1,0,1,\nA,s,1,1,2,N\n"));

  EXPECT_EQ(trial.series.at(0).unit, "N");
  EXPECT_EQ(trial.runs.at(0).readings.at(0).reading, 1);
}

TEST(Units, LeftEmptyAreNotGuessedBetweenTwo) {
  EXPECT_THAT(
      problem_in(with_columns("unit", "A,s,1,0,1,N\nA,s,1,1,104,gf\nA,s,1,3,2,\n")),
      HasSubstr("line 4, column unit: unit is empty here, and other rows of this run name more "
                "than one. Accepted: N or gf."));
}

TEST(Threads, AreSeriesOfTheirOwn) {
  const auto trial = taken(with_columns(
      "thread,thread_lot", "A,s,1,0,104,nylon,1\nA,s,1,0,65,rayon,1\nA,s,2,0,104,nylon,2\n"));

  EXPECT_EQ(trial.series.size(), 3U);
}

TEST(Threads, LeftEmptyAreThoseOfTheRunsOtherRows) {
  const auto trial = taken(
      with_columns("thread,thread_lot", "A,s,1,0,104,nylon,\nA,s,1,1,120,,\nA,s,1,3,130,,7\n"));

  ASSERT_EQ(trial.series.size(), 1U);
  EXPECT_EQ(trial.series[0].thread, "nylon");
  EXPECT_EQ(trial.series[0].thread_lot, "7");
}

TEST(Threads, LeftEmptyAreNotGuessedBetweenTwo) {
  EXPECT_THAT(
      problem_in(with_columns("thread", "A,s,1,0,104,nylon\nA,s,1,0,65,rayon\nA,s,1,1,70,\n")),
      HasSubstr("line 4, column thread: thread is empty here"));
}

}  // namespace
}  // namespace keenfall::exchange
