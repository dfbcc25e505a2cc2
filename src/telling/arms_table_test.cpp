#include "telling/arms_table.h"

#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::telling {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::StartsWith;
using verdicts::Judgement;
using verdicts::testing::made_judgement;

TEST(ArmsTable, HasALineForEachMediumAndItsArmsBelow) {
  const Table table = arms_table(made_judgement());

  ASSERT_EQ(table.rows.size(), 8U);
  EXPECT_THAT(table.rows[0].cells, ElementsAre("On new matting"));
  EXPECT_THAT(table.rows[1].cells,
              ElementsAre("A", "6", "104", "34 (28–42)", "201 (149–271)", "20 %", "0.62"));
  EXPECT_THAT(table.rows[4].cells, ElementsAre("On uplifted matting"));
}

TEST(ArmsTable, GivesCutsWithTheirInterval) {
  EXPECT_EQ(arms_table(made_judgement()).rows[3].cells[3], "108 (88–132)");
}

TEST(ArmsTable, MarksWhatLiesBeyondWhatWasCut) {
  Judgement judgement = made_judgement();
  EXPECT_THAT(arms_table(judgement).footnotes, IsEmpty());

  judgement.arms[2].half_keenness->beyond_what_was_cut = true;
  judgement.arms[2].half_keenness->runs_that_reached = 1;

  EXPECT_EQ(arms_table(judgement).rows[3].cells[3], "108* (88–132)");
  EXPECT_THAT(arms_table(judgement).footnotes,
              ElementsAre("* beyond what was cut: the curve carried on."));
}

TEST(ArmsTable, SaysTheLevelOfReadingsThatFallAsAShareOfTheStart) {
  Judgement judgement = made_judgement();
  judgement.kind.keener_when = trials::KeenerWhen::higher;
  judgement.stop_level = 4;

  EXPECT_EQ(arms_table(judgement).columns[4].head, "to 0.25 of start");
}

TEST(ArmsTable, SaysAtLeastWhereNoRunGotThere) {
  Judgement judgement = made_judgement();
  judgement.arms[2].half_keenness->beyond_what_was_cut = true;
  judgement.arms[2].half_keenness->runs_that_reached = 0;

  EXPECT_EQ(arms_table(judgement).rows[3].cells[3], "at least 88");
  EXPECT_THAT(arms_table(judgement).footnotes,
              ElementsAre("At least: no run got there, so the lower end of the 95 % interval "
                          "alone."));
}

TEST(ArmsTable, GivesRowsTheNumberThatSentencesCallThemBy) {
  Judgement judgement = made_judgement();
  EXPECT_EQ(arms_table(judgement).rows[3].key, "");

  for (auto& arm : judgement.arms) arm.arm.blade += " of the long knives";

  EXPECT_EQ(arms_table(judgement).rows[3].key, "3");
  EXPECT_EQ(arms_table(judgement).rows[3].cells[0], "C of the long knives");
}

TEST(ArmsTable, HasAColumnForTheReadingEdgesAreComparedAt) {
  Judgement judgement = made_judgement();
  judgement.stop_reading = 400;
  judgement.arms[0].common_reading = judgement.arms[0].half_keenness;

  EXPECT_THAT(arms_table(judgement).columns,
              Contains(Column{.head = "to 400 gf", .drop_order = 4}));
  EXPECT_EQ(arms_table(judgement).rows[2].cells[4], "not given");
}

// Each medium's edges are compared at a reading of their own (compare.h).
TEST(ArmsTable, SaysOfEachMediumAtWhichReadingItIsComparedWhereTheyDiffer) {
  Judgement judgement = made_judgement();
  for (verdicts::Comparison& pair : judgement.comparisons) {
    pair.at = {.what = verdicts::ComparedAt::common_reading, .reading = pair.a > 2 ? 620.0 : 270.0};
  }
  for (auto& arm : judgement.arms) arm.common_reading = arm.half_keenness;

  const Table table = arms_table(judgement);

  EXPECT_EQ(table.columns[4].head, "to one reading");
  EXPECT_EQ(table.rows[0].cells[0], "On new matting (one reading: 270 gf)");
  EXPECT_EQ(table.rows[4].cells[0], "On uplifted matting (one reading: 620 gf)");
}

TEST(ArmsTable, OfATestCountsTheRunsThatWereSeenToFail) {
  Judgement judgement = made_judgement();
  judgement.test = verdicts::TestJudged{.words = "slices newsprint"};
  for (auto& arm : judgement.arms) arm.test = arm.stop_level;

  const Table table = arms_table(judgement);

  EXPECT_EQ(table.columns[2].head, "seen to fail");
  EXPECT_EQ(table.columns[3].head, "until it fails");
  EXPECT_THAT(table.rows[1].cells, ElementsAre("A", "6", "4", "201 (149–271)", "20 %"));
  EXPECT_THAT(table.columns_explained, StartsWith("Scatter: "));
}

TEST(ArmsTable, IsEmptyWithoutArms) { EXPECT_EQ(arms_table(Judgement{}), Table{}); }

TEST(ArmsTable, SaysOnceAReadingThatAllMediaAreComparedAt) {
  Judgement judgement = made_judgement();
  for (verdicts::Comparison& pair : judgement.comparisons) {
    pair.at = {.what = verdicts::ComparedAt::common_reading, .reading = 270};
  }
  for (auto& arm : judgement.arms) arm.common_reading = arm.half_keenness;

  const Table table = arms_table(judgement);

  EXPECT_EQ(table.columns[4].head, "to 270 gf");
  EXPECT_EQ(table.rows[0].cells[0], "On new matting");
}

TEST(ArmsTable, TellsEdgesThatWereReadFromThoseThatWereTested) {
  Judgement judgement = made_judgement();
  judgement.test = verdicts::TestJudged{.words = "slices newsprint", .level = 4};
  judgement.arms[0].test = verdicts::CutsToLevel{.cuts = verdicts::testing::around(190, 0.1),
                                                 .beyond_what_was_cut = true,
                                                 .runs_that_reached = 2};

  const Table table = arms_table(judgement);

  EXPECT_EQ(table.columns[3].head, "to 4× start");
  EXPECT_THAT(table.rows[1].cells, ElementsAre("A", "6", "2", "190* (172–210)", "20 %"));
  EXPECT_THAT(table.rows[2].cells, ElementsAre("B, read", "6", "", "283 (210–382)", "20 %"));
  EXPECT_THAT(table.footnotes, ElementsAre("* beyond what was cut."));
}

}  // namespace
}  // namespace keenfall::telling
