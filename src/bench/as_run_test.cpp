#include "bench/as_run.h"

#include "bench/a_sheet_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::bench {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

trials::Run run_of(const Tapped& tapped) { return as_run(a_sheet(), tapped.entries()).run; }

TEST(AsRun, KeepsWhatTheSheetSaysAndWhatWasRead) {
  Tapped tapped;
  tapped.start().cut(1).read(1, seven(120)).with(Closed{});

  const CutRun cut = as_run(a_sheet(), tapped.entries());

  EXPECT_EQ(cut.series.front().kind.name, "thread_push");
  EXPECT_EQ(cut.series.front().unit, "gf");
  EXPECT_EQ(cut.series.front().thread, "0.25 mm polyester");
  EXPECT_EQ(cut.run.arm.blade, "C");
  EXPECT_EQ(cut.run.order, 14);
  ASSERT_EQ(cut.run.readings.size(), 14U);
  EXPECT_EQ(cut.run.readings[8].cuts, 1);
  EXPECT_EQ(cut.run.readings[8].reading, 120);
  EXPECT_EQ(cut.run.readings[8].station, "middle");
  EXPECT_EQ(cut.run.readings[8].repeat, 2);
  EXPECT_THAT(cut.run.deviations, IsEmpty());
}

TEST(AsRun, KeepsAReadingInTheUnitItWasTypedIn) {
  Tapped tapped;
  tapped.with(ReadingTaken{.at_cuts = 0, .reading = 1.02, .unit = "N", .note = "slack"})
      .read(0, {104})
      .with(Closed{});

  const CutRun cut = as_run(a_sheet(), tapped.entries());

  ASSERT_EQ(cut.series.size(), 2U);
  EXPECT_EQ(cut.series[0].unit, "N");
  EXPECT_EQ(cut.series[1].unit, "gf");
  EXPECT_EQ(cut.series[0].thread, "0.25 mm polyester");
  EXPECT_EQ(cut.run.readings[0].series, 0U);
  EXPECT_EQ(cut.run.readings[0].reading, 1.02);
  EXPECT_EQ(cut.run.readings[0].repeat, 1);
  EXPECT_EQ(cut.run.readings[1].series, 1U);
  EXPECT_EQ(cut.run.readings[1].repeat, 2);
  EXPECT_EQ(cut.run.notes.front(), "Reading 1.02 N at 0 cuts: slack");
}

TEST(AsRun, LeavesOutWhatWasTakenBack) {
  Tapped tapped;
  tapped.start().cut(1).read(1, {999});
  tapped.take_back(tapped.last_id()).read(1, seven(120)).with(Closed{});

  EXPECT_EQ(run_of(tapped).readings.size(), 14U);
}

TEST(AsRun, StrikesReadingsFromBeforeItWasSharpenedAgain) {
  Tapped tapped;
  tapped.read(0, seven(118))
      .with(StartDecided{.decision = StartDecision::sharpen_again, .reason = "too blunt"})
      .start()
      .with(Closed{});

  const trials::Run run = run_of(tapped);

  ASSERT_EQ(run.readings.size(), 14U);
  EXPECT_EQ(run.readings[6].struck_reason, "read before the edge was sharpened again");
  EXPECT_FALSE(run.readings[7].struck_reason);
  EXPECT_EQ(run.readings[7].repeat, 1);
  EXPECT_THAT(run.notes, ElementsAre("Sharpened again before the first cut: too blunt"));
}

TEST(AsRun, SaysWhatWasDoneOtherwiseThanPlanned) {
  Tapped tapped;
  tapped.read(0, seven(130))
      .with(StartDecided{.decision = StartDecision::go_on_unmatched, .reason = "stone worn out"})
      .cut(3)
      .read(3, {140, 141})
      .with(Closed{.reason = "ran out of matting"});

  EXPECT_THAT(run_of(tapped).deviations,
              ElementsAre("Begun unmatched: stone worn out",
                          "Stopped: ran out of matting",
                          "Not read at 1 cut.",
                          "Read 2 times instead of 7 at 3 cuts."));
}

TEST(AsRun, KeepsEventsWithTheCutTheyHappenedAt) {
  Tapped tapped;
  tapped.start()
      .cut(1)
      .with(Happened{.kind = trials::EventKind::hit_something, .at_cuts = 1, .words = {}})
      .with(Happened{.kind = trials::EventKind::other, .at_cuts = 1, .words = "staple"})
      .with(Paused{})
      .with(Resumed{.blade_wiped = true, .piece_changed = false});

  const trials::Run run = run_of(tapped);

  ASSERT_EQ(run.events.size(), 3U);
  EXPECT_EQ(run.events[0].kind, trials::EventKind::hit_something);
  EXPECT_EQ(run.events[0].as_written, "hit something");
  EXPECT_EQ(run.events[1].as_written, "staple");
  EXPECT_EQ(run.events[2].kind, trials::EventKind::pause);
  EXPECT_EQ(run.events[2].cuts, 1);
  EXPECT_THAT(run.notes, ElementsAre("Blade wiped before going on at 1 cut."));
}

TEST(AsRun, VoidsWithTheReasonAndKeepsTheReadings) {
  Tapped tapped;
  tapped.start().cut(1).with(Voided{.reason = "underlay cut through"});

  const trials::Run run = run_of(tapped);

  EXPECT_EQ(run.voided_reason, "underlay cut through");
  EXPECT_EQ(run.readings.size(), 7U);
  EXPECT_THAT(run.deviations, IsEmpty());
}

TEST(AsRun, NotesTheSharpeningTheAnglesAndTheScale) {
  Tapped tapped;
  tapped
      .with(Sharpened{
          .stone = "45 um diamond plate", .passes_per_side = 24, .minutes = 2.8, .burr = "cork"})
      .with(AngleMeasured{.angle = {17.5}, .where = "heel, left"})
      .with(ReadingTaken{.at_cuts = 0,
                         .reading = 104,
                         .station = "heel",
                         .scale_line = "ST,GS,+  104.2 g",
                         .note = "slack thread"});

  EXPECT_THAT(
      run_of(tapped).notes,
      ElementsAre("Reading 104 gf at 0 cuts: slack thread",
                  "Reading 104 gf at 0 cuts, from the scale: ST,GS,+  104.2 g",
                  "Sharpened on 45 um diamond plate, 24 passes per side, 2.8 min; burr: cork.",
                  "Measured 17.5° per side (heel, left)."));
}

}  // namespace
}  // namespace keenfall::bench
