#include "bench/standing.h"

#include "bench/a_sheet_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

namespace keenfall::bench {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

Standing standing_after(const Tapped& tapped) { return standing_of(a_sheet(), tapped.entries()); }

trials::Plan a_plan() {
  trials::Plan plan;
  plan.cuttings = {{.medium = {.name = "new sisal", .condition = {}},
                    .lot = "roll 2",
                    .method = {},
                    .checkpoint_cuts = {0, 1, 3}}};
  plan.arms = {{.blade = "A", .edge = {}, .cutting = 0}};
  plan.reading.stations = {"heel", "tip"};
  return plan;
}

const trials::ReadingKind& thread_push() { return *trials::find_reading_kind("thread_push"); }

TEST(RunSheet, FollowsThePlan) {
  const auto sheet = sheet_of(
      a_plan(), {.name = "4", .arm = 0, .specimen = "2", .block = 4, .order = 7}, thread_push());

  ASSERT_TRUE(sheet);
  EXPECT_EQ(sheet->run.arm.blade, "A");
  EXPECT_EQ(sheet->run.medium_lot, "roll 2");
  EXPECT_EQ(sheet->run.order, 7);
  EXPECT_EQ(sheet->run.name, "4");
  EXPECT_EQ(sheet->run.block, "4");
  EXPECT_EQ(sheet->unit, "gf");
  EXPECT_EQ(station_in_turn(*sheet, 0), "heel");
  EXPECT_EQ(station_in_turn(*sheet, 3), "tip");
}

TEST(RunSheet, IsRefusedWithoutCheckpointsAndWithoutItsArm) {
  trials::Plan plan = a_plan();
  plan.cuttings[0].checkpoint_cuts.clear();
  const RunToCut first{.name = "1", .arm = 0, .specimen = {}, .block = 1, .order = 1};

  EXPECT_EQ(sheet_of(plan, first, thread_push()).error().sentence,
            "The plan does not say when an edge that cuts new sisal is read.");

  plan.arms.clear();
  EXPECT_EQ(sheet_of(plan, first, thread_push()).error().sentence, "The plan has no arm 1.");
}

TEST(Standing, BringsReadingsTypedInOtherUnitsIntoTheSheets) {
  Tapped tapped;
  tapped.with(ReadingTaken{.at_cuts = 0, .reading = 1, .unit = "N"});

  const Standing standing = standing_of(a_sheet(), tapped.entries());

  ASSERT_EQ(standing.readings.size(), 1U);
  EXPECT_NEAR(standing.readings[0].reading, 101.97, 0.01);
  EXPECT_TRUE(standing.start.within_gate);
}

TEST(Standing, BeginsWithTheStart) {
  const Standing standing = standing_after(Tapped());

  EXPECT_EQ(standing.phase, Phase::preparing);
  EXPECT_EQ(standing.next_station, "heel");
  EXPECT_EQ(standing.next_checkpoint_cuts, 1);
  EXPECT_FALSE(standing.to_take_back);
}

TEST(Standing, GoesOnToCutOnceTheStartIsReadAndDecided) {
  Tapped tapped;
  tapped.read(0, seven(104));
  EXPECT_EQ(standing_after(tapped).phase, Phase::preparing);
  EXPECT_TRUE(standing_after(tapped).start.within_gate);

  tapped.with(StartDecided{});

  EXPECT_EQ(standing_after(tapped).phase, Phase::cutting);
}

TEST(Standing, AsksForReadingsAtACheckpointAndOnlyThere) {
  Tapped tapped;
  tapped.start().cut(1);
  EXPECT_EQ(standing_after(tapped).phase, Phase::reading);
  EXPECT_EQ(standing_after(tapped).readings_here, 0U);

  tapped.read(1, {110, 111});
  EXPECT_EQ(standing_after(tapped).readings_here, 2U);
  EXPECT_EQ(standing_after(tapped).next_station, "tip");

  tapped.read(1, {112, 113, 114, 115, 116}).cut(1);
  const Standing standing = standing_after(tapped);
  EXPECT_EQ(standing.phase, Phase::cutting);
  EXPECT_EQ(standing.cuts, 2);
  EXPECT_EQ(standing.next_checkpoint_cuts, 3);
}

// The demo's protocol: 255 cuts, nine checkpoints of seven readings.
TEST(Standing, LeadsThroughAWholeRunToItsCap) {
  Tapped tapped;
  tapped.start();
  double cuts = 0;
  for (const double checkpoint : {1, 3, 7, 15, 31, 63, 127, 255}) {
    EXPECT_EQ(standing_after(tapped).next_checkpoint_cuts, checkpoint);
    tapped.cut(static_cast<int>(checkpoint - cuts));
    cuts = checkpoint;
    EXPECT_EQ(standing_after(tapped).phase, Phase::reading);
    tapped.read(checkpoint, seven(104 + checkpoint));
  }

  Standing standing = standing_after(tapped);
  EXPECT_EQ(standing.phase, Phase::at_the_stop);
  EXPECT_EQ(standing.stop, StopReached::cap);
  EXPECT_EQ(standing.cuts, 255);
  EXPECT_EQ(standing.readings.size(), 63U);
  EXPECT_FALSE(standing.next_checkpoint_cuts);

  tapped.with(Closed{});
  EXPECT_EQ(standing_after(tapped).phase, Phase::closed);
}

TEST(Standing, CountsTenTenthsAsOne) {
  Tapped tapped;
  tapped.start();
  for (int i = 0; i < 10; ++i) tapped.with(CutsMade{.cuts = 0.1});

  EXPECT_EQ(standing_after(tapped).cuts, 1);
  EXPECT_EQ(standing_after(tapped).phase, Phase::reading);
}

TEST(Standing, StopsAtTheLevelOfItsOwnStart) {
  Tapped tapped;
  tapped.start().cut(1).read(1, seven(415));
  EXPECT_EQ(standing_after(tapped).phase, Phase::cutting);

  tapped.cut(2).read(3, seven(416));
  EXPECT_EQ(standing_after(tapped).phase, Phase::at_the_stop);
  EXPECT_EQ(standing_after(tapped).stop, StopReached::level);
}

TEST(Standing, StopsAtAReadingWhereThePlanSaysOne) {
  RunSheet sheet = a_sheet();
  sheet.stop = {.level = {}, .reading = 300, .force_cap_newton = {}};
  Tapped tapped;
  tapped.start().cut(1).read(1, seven(301));

  EXPECT_EQ(standing_of(sheet, tapped.entries()).stop, StopReached::reading);

  sheet.kind = *trials::find_reading_kind("card_bite");
  EXPECT_FALSE(standing_of(sheet, tapped.entries()).stop);
}

TEST(Standing, CountsAnEntryThatArrivesTwiceOnce) {
  Tapped tapped;
  tapped.start().cut(1);
  std::vector<Entry> entries = tapped.entries();
  entries.push_back(entries.back());

  EXPECT_EQ(standing_of(a_sheet(), entries).cuts, 1);
}

TEST(Standing, TakesBackManyLevelsInAnyOrder) {
  Tapped tapped;
  tapped.start().cut(3);
  const Standing before = standing_after(tapped);
  const std::string last = tapped.last_id();
  const std::string reading = "e2";

  tapped.take_back(last);
  EXPECT_EQ(standing_after(tapped).cuts, 2);
  EXPECT_EQ(tapped.entries()[*standing_after(tapped).to_take_back].id, "e10");

  tapped.take_back(reading).take_back(last);
  EXPECT_EQ(standing_after(tapped).cuts, 2);
  EXPECT_EQ(standing_after(tapped).readings.size(), before.readings.size() - 1);
}

TEST(Standing, HoldsATakingBackThatCameBeforeWhatItTakesBack) {
  Tapped tapped;
  tapped.take_back("e2").cut(1);

  EXPECT_EQ(standing_after(tapped).cuts, 0);
}

TEST(Standing, SetsAsideWhatCameAfterTheEndUntilTheEndIsTakenBack) {
  Tapped tapped;
  tapped.start().cut(1).with(Closed{.reason = "called away"});
  const std::string end = tapped.last_id();
  tapped.cut(2);

  const Standing over = standing_after(tapped);
  EXPECT_EQ(over.phase, Phase::closed);
  EXPECT_EQ(over.cuts, 1);
  ASSERT_EQ(over.set_aside.size(), 2U);
  EXPECT_EQ(over.set_aside[0].why, "It came after the run was over.");

  tapped.take_back(end);
  EXPECT_EQ(standing_after(tapped).cuts, 3);
  EXPECT_THAT(standing_after(tapped).set_aside, IsEmpty());
}

TEST(Standing, ReadsAStartThatWasSharpenedAgainAnew) {
  Tapped tapped;
  tapped.read(0, seven(118))
      .with(StartDecided{.decision = StartDecision::sharpen_again, .reason = "blunt"});

  Standing standing = standing_after(tapped);
  EXPECT_EQ(standing.phase, Phase::preparing);
  EXPECT_EQ(standing.sharpenings, 2);
  EXPECT_EQ(standing.readings_here, 0U);
  EXPECT_FALSE(standing.start.combined);

  tapped.read(0, seven(104)).with(StartDecided{}).cut(1).read(1, seven(417));
  standing = standing_after(tapped);
  EXPECT_DOUBLE_EQ(*standing.start.combined, 104);
  EXPECT_EQ(standing.stop, StopReached::level);
}

TEST(Standing, DoesNotSharpenAnEdgeAgainThatHasCut) {
  Tapped tapped;
  tapped.start().cut(1).with(StartDecided{.decision = StartDecision::sharpen_again, .reason = {}});

  const Standing standing = standing_after(tapped);

  EXPECT_EQ(standing.sharpenings, 1);
  ASSERT_EQ(standing.set_aside.size(), 1U);
  EXPECT_EQ(standing.phase, Phase::reading);
}

TEST(Standing, GoesOnWhereACheckpointWasPassedBy) {
  Tapped tapped;
  tapped.start().cut(2).read(2, seven(120)).cut(1);

  // Read at 2 instead of 1; at 3 it is read as planned.
  const Standing standing = standing_after(tapped);
  EXPECT_EQ(standing.readings[7].checkpoint, 1U);
  EXPECT_EQ(standing.phase, Phase::reading);
  EXPECT_EQ(standing.readings_here, 0U);
}

TEST(Standing, CountsMinutesAtWorkWithoutPauses) {
  std::vector<Entry> entries{{.id = "a", .device = {}, .at_ms = 0, .what = CutsMade{}},
                             {.id = "b", .device = {}, .at_ms = 60'000, .what = Paused{}},
                             {.id = "c",
                              .device = {},
                              .at_ms = 260'000,
                              .what = Resumed{.blade_wiped = true, .piece_changed = true}},
                             {.id = "d", .device = {}, .at_ms = 320'000, .what = CutsMade{}},
                             {.id = "e", .device = {}, .at_ms = 90'000'000, .what = CutsMade{}}};

  const Standing standing = standing_of(a_sheet(), entries);

  EXPECT_DOUBLE_EQ(standing.minutes_at_work, 2);
  EXPECT_EQ(standing.pieces, 2);
  EXPECT_FALSE(standing.is_paused);
}

// Whatever is tapped: the count is the sum of what stands, and taking all back is the beginning.
TEST(Standing, IsTheSumOfWhatStands) {
  rc::check([] {
    const auto moves = *rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 12));
    Tapped tapped;
    for (const int move : moves) {
      if (move < 6) {
        tapped.with(CutsMade{.cuts = 1.0 + move});
      } else if (move < 8) {
        tapped.read(standing_after(tapped).cuts, {100.0 + move});
      } else if (move < 9) {
        tapped.with(Happened{.kind = trials::EventKind::wet, .at_cuts = 0, .words = {}});
      } else if (const auto last = standing_after(tapped).to_take_back) {
        tapped.take_back(tapped.entries()[*last].id);
      }
    }
    const auto& entries = tapped.entries();
    double sum = 0;
    for (const std::size_t index : entries_that_stand(entries)) {
      if (const auto* made = std::get_if<CutsMade>(&entries[index].what)) sum += made->cuts;
    }

    RC_ASSERT(standing_after(tapped).cuts == sum);
    while (const auto last = standing_after(tapped).to_take_back) {
      tapped.take_back(entries[*last].id);
    }
    Standing empty = standing_after(tapped);
    RC_ASSERT(empty.cuts == 0 && empty.readings.empty() && empty.phase == Phase::preparing);
  });
}

TEST(EntriesThatStand, KeepTheirOrder) {
  Tapped tapped;
  tapped.cut(3).take_back("e2");

  EXPECT_THAT(entries_that_stand(tapped.entries()), ElementsAre(0, 2));
}

}  // namespace
}  // namespace keenfall::bench
