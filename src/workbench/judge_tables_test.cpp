#include "workbench/judge_tables.h"

#include "blunting/simulated_run.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

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

TEST(JudgeTrial, UsesAStopReadingWhereItFitsAndSaysWhereItDoesNot) {
  const auto found = judged(two_kinds(), {.stop_reading = "400 gf"});

  ASSERT_TRUE(found);
  ASSERT_EQ(found->size(), 2U);
  EXPECT_EQ(found->at(0).stop_reading, 400);
  EXPECT_FALSE(found->at(1).stop_reading);
  EXPECT_EQ(std::ranges::count(found->at(1).cannot_say,
                               "The stop reading 400 gf is none that a " + found->at(1).kind.words +
                                   " could be, so it was not used."),
            1);
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

// One arm is only tested, so that edges read and edges tested are compared too.
TEST(JudgeTrial, PointsFromEachJudgedRunToTheRunItIs) {
  trials::Trial trial = readings_and_lives();
  for (std::size_t r = 0; r < trial.runs.size(); ++r) {
    if (r >= 3) trial.runs[r].readings.clear();
    if (r < 3) trial.runs[r].edge_lives.clear();
  }
  std::swap(trial.runs[0], trial.runs[4]);

  const auto found = judged(trial, {.test_level = 2});

  ASSERT_TRUE(found);
  ASSERT_EQ(found->back().kind.name, "read_and_tested");
  for (const verdicts::Judgement& judgement : *found) {
    ASSERT_FALSE(judgement.runs.empty());
    for (const verdicts::RunResult& run : judgement.runs) {
      EXPECT_EQ(trial.runs.at(run.run).name, run.name);
      EXPECT_EQ(trial.runs.at(run.run).arm, judgement.arms.at(run.arm).arm);
    }
  }
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

// A and B are read, C is only tested.
trials::Trial read_and_tested_edges(std::optional<double> level) {
  trials::Trial trial = two_kinds();
  trial.blades.push_back({.name = "C"});
  double cuts = 40;
  for (const char* name : {"1", "2", "3", "4"}) {
    trial.runs.push_back({.name = name,
                          .arm = {.blade = "C", .medium = {.name = "sisal"}},
                          .edge_lives = {{.test = "paper",
                                          .lasted_cuts = cuts,
                                          .failed_by_cuts = 1.2 * cuts,
                                          .level = level}}});
    cuts *= 1.3;
  }
  return trial;
}

bool is_said(const verdicts::Judgement& judgement, const std::string& words) {
  return std::ranges::any_of(judgement.cannot_say, [&words](const std::string& sentence) {
    return sentence.find(words) != std::string::npos;
  });
}

TEST(JudgeTrial, ComparesEdgesReadWithEdgesTestedWhereTheTableStatesTheLevel) {
  const auto found = judged(read_and_tested_edges(3), {});

  ASSERT_TRUE(found);
  ASSERT_EQ(found->size(), 4U);
  EXPECT_EQ(found->at(3).kind.name, "read_and_tested");
  EXPECT_EQ(found->at(3).comparisons.size(), 2U);
  EXPECT_EQ(found->at(3).stop_level, 3);
  EXPECT_TRUE(is_said(found->at(3), "the level is taken as one of the thread push reading"));
}

TEST(JudgeTrial, TakesTheLevelAskedForWhereTheTableStatesNone) {
  const auto found = judged(read_and_tested_edges({}), {.test_level = 2.5});

  ASSERT_EQ(found->size(), 4U);
  EXPECT_EQ(found->at(2).test->level, 2.5);
  EXPECT_EQ(found->at(3).stop_level, 2.5);
}

TEST(JudgeTrial, SaysWhatToStateWhereNoLevelIsKnown) {
  const auto found = judged(read_and_tested_edges({}), {});

  ASSERT_EQ(found->size(), 3U);
  EXPECT_TRUE(is_said(found->at(2), "or by --test-level=3 if it means 3 times the start reading"));
}

TEST(JudgeTrial, ComparesNothingWhereTheTableStatesTwoLevels) {
  trials::Trial trial = read_and_tested_edges(3);
  trial.runs.back().edge_lives[0].level = 2;
  const auto found = judged(trial, {.test_level = 3});

  ASSERT_EQ(found->size(), 3U);
  EXPECT_TRUE(is_said(found->at(2), "the table says 2 and 3 times the start reading"));
}

TEST(JudgeTrial, SaysWhatToStateWhereOnlySomeLivesStateALevel) {
  trials::Trial trial = read_and_tested_edges(3);
  trial.runs.back().edge_lives[0].level.reset();

  EXPECT_TRUE(is_said(judged(trial, {})->at(2), "(--test-level=3 says the same for those)"));
  EXPECT_EQ(judged(trial, {.test_level = 3})->size(), 4U);
}

TEST(JudgeTrial, SaysThatALevelForATestWasNotUsedWhereNothingWasTested) {
  const auto found = judged(two_kinds(), {.test_level = 3});

  EXPECT_TRUE(is_said(found->at(0), "no edge was judged by one, so it was not used"));
}

TEST(JudgeTrial, SaysThatALevelForATestWasNotUsedWhereOnlyReadEdgesWereTested) {
  const auto found = judged(readings_and_lives(), {.test_level = 3});

  ASSERT_EQ(found->size(), 3U);
  EXPECT_TRUE(is_said(found->at(2), "so it was not used"));
}

TEST(JudgeTrial, TakesTheLevelAskedForAsThatOfAPassLadder) {
  trials::Trial trial = two_kinds();
  trial.blades.push_back({.name = "C"});
  trial.series.push_back({.kind = *trials::find_reading_kind("pass_ladder"), .unit = "rung"});
  for (const char* name : {"1", "2", "3", "4"}) {
    trials::Run run{.name = name, .arm = {.blade = "C", .medium = {.name = "sisal"}}};
    const bool is_early = *name == '1';
    run.readings = {{.series = 2, .cuts = 0, .reading = 7},
                    {.series = 2, .cuts = 30, .reading = is_early ? 5.0 : 6.0},
                    {.series = 2, .cuts = 60, .reading = 5}};
    trial.runs.push_back(std::move(run));
  }
  const auto found = judged(trial, {.test_level = 3});

  ASSERT_EQ(found->size(), 4U);
  EXPECT_EQ(found->at(3).test->level, 3);
  EXPECT_EQ(found->at(3).arms.size(), 3U);
}

}  // namespace
}  // namespace keenfall::workbench
