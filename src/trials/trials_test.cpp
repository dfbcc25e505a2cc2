#include "trials/arm_order.h"
#include "trials/counted.h"
#include "trials/trial.h"

#include <gtest/gtest.h>

namespace keenfall::trials {
namespace {

TEST(Angles, ASeventeenDegreeEdgeMeasuresThirtyFourInclusiveAndBack) {
  EXPECT_DOUBLE_EQ(inclusive(PerSideAngle{17}).deg, 34);
  EXPECT_DOUBLE_EQ(per_side(InclusiveAngle{34}).deg, 17);
}

TEST(Edges, AreSaidWithAnglesPerSideAndOnlyWhatWasRecorded) {
  const EdgePreparation edge{.bevel_angle = PerSideAngle{17},
                             .apex_angle = PerSideAngle{20},
                             .finish = "9 um diamond",
                             .thickness_behind_edge_mm = 0.38};

  EXPECT_EQ(in_words(edge),
            "17° per side, 20° per side at the apex, 9 um diamond, 0.38 mm behind the edge");
  EXPECT_EQ(in_words(EdgePreparation{}), "");
  EXPECT_EQ(in_words(EdgePreparation{.thickness_behind_edge_mm = 0.38}, {.length = "in"}),
            "0.015 in behind the edge");
}

TEST(CutMethods, AreSaidWithLengthAndEdgeUsed) {
  EXPECT_EQ(in_words(CutMethod{.motion = Motion::slice, .cut_length_mm = 100, .edge_used_mm = 40}),
            "slice of 100 mm on 40 mm of edge");
  EXPECT_EQ(in_words(CutMethod{}), "");
  EXPECT_EQ(in_words(CutMethod{.cut_length_mm = 100}, {.length = "in"}), "3.94 in");
}

TEST(Hardnesses, AreSaidWithTheirScaleAndHowTheyAreKnown) {
  EXPECT_EQ(in_words(Hardness{.reading = 58.5}), "58.5 HRC");
  EXPECT_EQ(in_words(Hardness{.reading = 720, .scale = HardnessScale::vickers}), "720 HV");
  EXPECT_EQ(in_words(Hardness{.reading = 61, .error = 1, .how_known = HowKnown::measured}),
            "61 ± 1 HRC, measured");
  EXPECT_EQ(in_words(Hardness{.reading = 61, .how_known = HowKnown::declared_by_maker}),
            "61 HRC, declared by the maker");
  EXPECT_EQ(in_words(Hardness{.reading = 61, .how_known = HowKnown::mill_sheet}),
            "61 HRC, by the mill's sheet");
}

TEST(WhatIsCounted, IsTheLastWordThatNamesSomethingToCount) {
  const auto named = [](const char* words) {
    return counted_in_words(words).value_or(Counted{.many = "nothing known"}).many;
  };

  EXPECT_EQ(named("Strokes made"), "strokes");
  EXPECT_EQ(named("cut length (m)"), "metres");
  EXPECT_EQ(named("time_min"), "minutes");
  EXPECT_EQ(named("cut(s)"), "cuts");
  EXPECT_EQ(named("15slices"), "slices");
  EXPECT_EQ(named("n"), "nothing known");
  EXPECT_EQ(named(""), "nothing known");
}

TEST(WhatIsCounted, IsSaidInTheSingularOfOneOnly) {
  const Counted passes{.one = "pass", .many = "passes"};

  EXPECT_EQ(so_many("1", passes), "1 pass");
  EXPECT_EQ(so_many("0", passes), "0 passes");
  EXPECT_EQ(so_many("1.5", passes), "1.5 passes");
  EXPECT_EQ(so_many("15", Counted{}), "15 cuts");
}

TEST(ReadingKinds, AreFoundHoweverTheyAreSpelled) {
  ASSERT_NE(find_reading_kind("Thread push"), nullptr);
  EXPECT_EQ(find_reading_kind("Thread push")->name, "thread_push");
  EXPECT_EQ(find_reading_kind("thread-push"), find_reading_kind("thread_push"));
  EXPECT_EQ(find_reading_kind("moon phase"), nullptr);
}

TEST(ReadingKinds, ForCurvesRefuseZeroAndCompareAboveTheStart) {
  for (const ReadingKind& kind : known_reading_kinds()) {
    if (kind.use != ReadingUse::curve) continue;
    EXPECT_EQ(kind.zero, ZeroReading::refused) << kind.name;
    EXPECT_GT(kind.default_level, 1) << kind.name;
  }
}

TEST(Trials, EdgesWithDifferentAnglesAreDifferentArms) {
  const auto arm_at = [](double deg) {
    return Arm{
        .blade = "A", .edge = {.bevel_angle = PerSideAngle{deg}}, .medium = {.name = "sisal"}};
  };
  const Trial trial{.blades = {{.name = "A"}},
                    .runs = {{.name = "1", .arm = arm_at(17)},
                             {.name = "1", .arm = arm_at(20)},
                             {.name = "2", .arm = arm_at(17)}}};

  EXPECT_EQ(arms_of(trial).size(), 2U);
  EXPECT_NE(find_blade(trial, "A"), nullptr);
  EXPECT_EQ(find_blade(trial, "Z"), nullptr);
}

TEST(ArmOrder, SortsNamesAsAPersonWould) {
  EXPECT_TRUE(naturally_before("blade 2", "blade 10"));
  EXPECT_FALSE(naturally_before("blade 10", "blade 2"));
  EXPECT_TRUE(naturally_before("A", "B"));
  EXPECT_TRUE(naturally_before("A", "A2"));
  EXPECT_FALSE(naturally_before("A", "A"));
}

TEST(ArmOrder, ListsBladesBeforeMedia) {
  const Arm a_used{.blade = "A", .medium = {.name = "used"}};
  const Arm b_new{.blade = "B", .medium = {.name = "new"}};

  EXPECT_TRUE(listed_before(a_used, b_new));
  EXPECT_FALSE(listed_before(b_new, a_used));
  EXPECT_FALSE(listed_before(a_used, a_used));
}

}  // namespace
}  // namespace keenfall::trials
