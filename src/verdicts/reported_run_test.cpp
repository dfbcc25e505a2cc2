#include "verdicts/reported_run.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::verdicts {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

trials::ReadingSeries series_of(const char* kind, const char* thread, const char* lot) {
  const trials::ReadingKind& known = *trials::find_reading_kind(kind);
  return {.kind = known, .unit = known.unit, .thread = thread, .thread_lot = lot};
}

// Two runs on two lots of nylon; card bites and a polyester thread are judged elsewhere.
trials::Trial a_trial() {
  return {.blades = {{.name = "A"}},
          .series = {series_of("card_bite", "", ""),
                     series_of("thread_push", "nylon", "1"),
                     series_of("thread_push", "nylon", "2"),
                     series_of("thread_push", "polyester", "1"),
                     series_of("pass_ladder", "nylon", "")},
          .runs = {{.name = "1",
                    .arm = {.blade = "A"},
                    .readings = {{.series = 1, .cuts = 0, .reading = 100},
                                 {.series = 0, .cuts = 0, .reading = 8},
                                 {.series = 3, .cuts = 0, .reading = 70}}},
                   {.name = "2",
                    .arm = {.blade = "A"},
                    .readings = {{.series = 1, .cuts = 0, .reading = 80},
                                 {.series = 2, .cuts = 0, .reading = 125},
                                 {.series = 4, .cuts = 0, .reading = 7}}}}};
}

CutsToLevel half_at(double cuts) { return {.cuts = {.median = cuts}}; }

// Of the second run, and then of the first.
Judgement of_nylon() {
  return {.kind = *trials::find_reading_kind("thread_push"),
          .unit = "gf",
          .thread = "nylon",
          .runs = {{.run = 1, .name = "2", .half_keenness_cuts = numerics::Interval{.median = 30}},
                   {.run = 0, .name = "1", .not_used_because = "voided: burr"}},
          .arms = {{.half_keenness = half_at(20)}}};
}

TEST(ReportedRuns, StandInTheOrderOfTheJudgementAndPointIntoTheTrial) {
  const auto runs = reported_runs(a_trial(), of_nylon());

  ASSERT_EQ(runs.size(), 2U);
  EXPECT_EQ(runs[0].run, 1U);
  EXPECT_EQ(runs[1].run, 0U);
}

TEST(ReportedRuns, HaveTheSeriesThatShareTheFitAndTheirReadingsTogether) {
  const auto runs = reported_runs(a_trial(), of_nylon());

  EXPECT_THAT(runs[0].series, ElementsAre(1, 2));
  ASSERT_EQ(runs[0].checkpoints.size(), 1U);
  EXPECT_NEAR(runs[0].checkpoints[0].reading, 100, 1e-12);  // the root of 80 x 125
  EXPECT_THAT(runs[1].series, ElementsAre(1));
  EXPECT_EQ(runs[1].checkpoints.size(), 1U);
}

// 1 gf = 9.80665e-3 N exactly (NIST SP 811 B.8).
TEST(ReportedRuns, HaveTheirReadingsInTheUnitThatTheJudgementIsToldIn) {
  Judgement told = of_nylon();
  told.unit = "N";

  const auto in_newtons = reported_runs(a_trial(), told);
  const auto recorded = reported_runs(a_trial(), of_nylon());

  ASSERT_FALSE(recorded[0].checkpoints.empty());
  EXPECT_NEAR(
      in_newtons[0].checkpoints[0].reading, recorded[0].checkpoints[0].reading * 9.80665e-3, 1e-12);
}

TEST(ReportedRuns, AreHeldAgainstTheirArmWhereBothReachedHalfKeenness) {
  Judgement judgement = of_nylon();

  EXPECT_EQ(reported_runs(a_trial(), judgement)[0].half_keenness_over_arm, 1.5);
  EXPECT_EQ(reported_runs(a_trial(), judgement)[1].half_keenness_over_arm, std::nullopt);
  judgement.arms[0].half_keenness.reset();
  EXPECT_EQ(reported_runs(a_trial(), judgement)[0].half_keenness_over_arm, std::nullopt);
}

TEST(ReportedRuns, OfAPassLadderHaveItsTriesAndNoCheckpoints) {
  Judgement judgement = of_nylon();
  judgement.kind = *trials::find_reading_kind("pass_ladder");
  judgement.thread.clear();

  const auto runs = reported_runs(a_trial(), judgement);

  EXPECT_THAT(runs[0].series, ElementsAre(4));
  EXPECT_THAT(runs[0].checkpoints, IsEmpty());
  EXPECT_THAT(runs[1].series, IsEmpty());
}

}  // namespace
}  // namespace keenfall::verdicts
