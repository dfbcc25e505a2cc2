#include "workbench/judge_tables.h"

#include "blunting/simulated_run.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace keenfall::workbench {
namespace {

trials::Trial two_kinds() {
  numerics::RandomStream random({4}, 0);
  trials::Trial trial{.name = "bench",
                      .blades = {{.name = "A"}, {.name = "B"}},
                      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"},
                                 {.kind = *trials::find_reading_kind("card_bite"), .unit = "mm"}}};
  for (const char* blade : {"A", "B"}) {
    for (const char* name : {"1", "2", "3"}) {
      trials::Run run{.name = name, .arm = {.blade = blade, .medium = {.name = "sisal"}}};
      const blunting::LogLogistic curve{std::log(100), std::log(20) + 0.2 * random.normal(), 0.8};
      run.readings = blunting::simulated_readings(
          curve, {.checkpoints = {0, 2, 8, 32, 64}, .repeats = 2}, {}, random);
      for (trials::Reading reading : run.readings) {
        if (reading.repeat != 1) continue;
        reading.series = 1;
        reading.reading = 900 / reading.reading;
        run.readings.push_back(reading);
      }
      trial.runs.push_back(std::move(run));
    }
  }
  return trial;
}

auto judged(const trials::Trial& trial, const JudgeOptions& options) {
  return judge_trial(trial, options, base::threads(2), base::unwatched());
}

TEST(JudgeTrial, JudgesTwoKindsOfReadingApart) {
  const auto found = judged(two_kinds(), {});

  ASSERT_TRUE(found);
  ASSERT_EQ(found->size(), 2U);
  EXPECT_EQ(found->at(0).kind.name, "thread_push");
  EXPECT_EQ(found->at(1).kind.name, "card_bite");
  EXPECT_NEAR(found->at(1).arms[0].start_reading->median, 9, 0.6);
}

TEST(JudgeTrial, JudgesOnlyTheKindAskedForAndNamesThoseThereAre) {
  EXPECT_EQ(judged(two_kinds(), {.kind = "card bite"})->size(), 1U);

  const auto refused = judged(two_kinds(), {.kind = "glint"});
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error()[0].place.column, "--kind");
  EXPECT_EQ(refused.error()[0].accepted, "thread_push, card_bite");
}

TEST(JudgeTrial, TakesAStopReadingInAnotherUnitOfForce) {
  const auto found = judged(two_kinds(), {.stop_reading = "3.922660 N", .kind = "thread_push"});

  ASSERT_TRUE(found);
  EXPECT_NEAR(
      *found->at(0).stop_reading, 400, 1e-3);  // 1 gf = 9.80665 mN exactly (SI, standard gravity)
}

TEST(JudgeTrial, RefusesAStopReadingThatIsNotAForce) {
  const auto refused = judged(two_kinds(), {.stop_reading = "4 mm", .kind = "thread_push"});

  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error()[0].place.column, "--stop-reading");
}

TEST(JudgeTrial, RefusesAModelNobodyKnows) {
  const auto refused = judged(two_kinds(), {.model = "fancy"});

  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error()[0].sentence, "There is no model called \"fancy\".");
}

TEST(JudgeTrial, FailsWithAReasonWhenEveryRunIsVoided) {
  trials::Trial trial = two_kinds();
  for (trials::Run& run : trial.runs) run.voided_reason = "rained on";
  const auto refused = judged(trial, {});

  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error()[0].kind, base::ProblemKind::unsuitable_data);
}

TEST(JudgeTrial, GivesTheSameNumbersForTheSameSeedOnAnyNumberOfThreads) {
  auto one = judge_trial(two_kinds(), {}, base::one_thread(), base::unwatched());
  auto many = judge_trial(two_kinds(), {}, base::threads(3), base::unwatched());
  for (auto* found : {&one, &many}) {
    for (verdicts::Judgement& judgement : **found) judgement.fit.cpu_seconds = 0;
  }

  EXPECT_EQ(*one, *many);
}

trials::Trial readings_and_lives() {
  trials::Trial trial = two_kinds();
  double cuts = 10;
  for (trials::Run& run : trial.runs) {
    run.edge_lives = {{.test = "paper", .lasted_cuts = cuts, .failed_by_cuts = cuts + 5}};
    cuts += 10;
  }
  return trial;
}

TEST(JudgeTrial, JudgesEdgeLivesAfterTheReadings) {
  const auto found = judged(readings_and_lives(), {});

  ASSERT_TRUE(found);
  ASSERT_EQ(found->size(), 3U);
  EXPECT_EQ(found->at(2).test->words, "paper");
  EXPECT_EQ(found->at(2).arms.at(0).test->runs_that_reached, 3);
}

TEST(JudgeTrial, JudgesOnlyEdgeLivesWhereTheyAreAskedFor) {
  const auto found = judged(readings_and_lives(), {.kind = "edge_life"});

  ASSERT_TRUE(found);
  ASSERT_EQ(found->size(), 1U);
  EXPECT_EQ(found->at(0).kind.name, "edge_life");
}

TEST(JudgeTrial, SaysThatATestHasNoStopLevel) {
  const auto found = judged(readings_and_lives(), {.stop_level = 3, .kind = "edge_life"});

  EXPECT_EQ(found->at(0).cannot_say.back(),
            "A stop level or reading was asked for; a pass-or-fail test has none, so it was not "
            "used.");
}

TEST(JudgeTrial, JudgesAPassLadderAtTheRungThatMostRunsPassAndThenFail) {
  trials::Trial trial{
      .blades = {{.name = "A"}, {.name = "B"}},
      .series = {{.kind = *trials::find_reading_kind("pass_ladder"), .unit = "rung"}}};
  for (const char* blade : {"A", "B"}) {
    for (const char* name : {"1", "2", "3"}) {
      trials::Run run{.name = name, .arm = {.blade = blade, .medium = {.name = "sisal"}}};
      run.readings = {{.cuts = 0, .reading = 7},
                      {.cuts = 10, .reading = 6},
                      {.cuts = 20, .reading = *blade == 'A' ? 5.0 : 6.0},
                      {.cuts = 40, .reading = 5}};
      trial.runs.push_back(std::move(run));
    }
  }

  const auto found = judged(trial, {});

  ASSERT_TRUE(found);
  EXPECT_EQ(found->at(0).test->rung, 6);
  EXPECT_EQ(found->at(0).runs.at(0).lasted_cuts, 10);
  EXPECT_EQ(found->at(0).runs.at(3).failed_by_cuts, 40);
}

TEST(JudgeTrial, JudgesAPassLadderAtTheRungAskedFor) {
  trials::Trial trial{
      .blades = {{.name = "A"}},
      .series = {{.kind = *trials::find_reading_kind("pass_ladder"), .unit = "rung"}}};
  trial.runs = {{.name = "1",
                 .arm = {.blade = "A", .medium = {.name = "sisal"}},
                 .readings = {{.cuts = 10, .reading = 7}, {.cuts = 20, .reading = 6}}}};

  const auto found = judged(trial, {.rung = 7});

  ASSERT_TRUE(found);
  EXPECT_EQ(found->at(0).test->rung, 7);
  EXPECT_EQ(found->at(0).runs.at(0).failed_by_cuts, 20);
}

}  // namespace
}  // namespace keenfall::workbench
