#include "blunting/times/time_data.h"

#include "blunting/times/ladder_lives.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::blunting {
namespace {

trials::Run a_run(std::vector<trials::EdgeLife> lives) {
  return {.name = "1", .arm = {.blade = "A"}, .edge_lives = std::move(lives)};
}

trials::Trial a_trial_of_lives(std::vector<trials::Run> runs) {
  return {.blades = {{.name = "A"}}, .runs = std::move(runs)};
}

struct Try {
  double cuts;
  double rung;
};

trials::Run on_the_ladder(const std::vector<Try>& tries) {
  trials::Run run{.name = "1", .arm = {.blade = "A"}};
  for (const Try& one : tries) run.readings.push_back({.cuts = one.cuts, .reading = one.rung});
  return run;
}

trials::Trial a_ladder(std::vector<trials::Run> runs) {
  trials::Trial trial = a_trial_of_lives(std::move(runs));
  trial.series = {{.kind = *trials::find_reading_kind("pass_ladder"), .unit = "rung"}};
  return trial;
}

std::string set_aside_because(const trials::Run& run) {
  const auto data =
      prepare_times(a_trial_of_lives({run, a_run({{.lasted_cuts = 5, .failed_by_cuts = 10}})}), {});
  return data->set_aside.at(0).because;
}

TEST(TimeData, AnEdgeNeverSeenToFailHasNoUpperBound) {
  const auto data = prepare_times(a_trial_of_lives({a_run({{.lasted_cuts = 20}})}), {});

  EXPECT_EQ(data->runs.at(0).log_bounds(), (LogTimeBounds{.after = std::log(20)}));
}

TEST(TimeData, SeveralLivesOfOneRunHoldTogether) {
  const auto data = prepare_times(
      a_trial_of_lives({a_run({{.lasted_cuts = 10, .failed_by_cuts = 40}, {.lasted_cuts = 20}})}),
      {});

  EXPECT_EQ(data->runs.at(0).lasted_cuts, 20);
  EXPECT_EQ(data->runs.at(0).failed_by_cuts, 40);
}

TEST(TimeData, LivesThatContradictEachOtherAreSetAsideInWords) {
  EXPECT_EQ(set_aside_because(a_run({{.lasted_cuts = 30}, {.failed_by_cuts = 20}})),
            "told to have passed at 30 cuts and to have failed by 20");
}

TEST(TimeData, AnEdgeThatFailedBeforeTheFirstCutIsSetAside) {
  EXPECT_EQ(set_aside_because(a_run({{.failed_by_cuts = 0}})), "had failed at 0 cuts");
}

TEST(TimeData, ALifeWithoutBoundsIsSetAside) {
  EXPECT_EQ(set_aside_because(a_run({{}})), "never seen to fail, nor to pass after the start");
}

TEST(TimeData, AStruckLifeIsNotUsed) {
  EXPECT_EQ(set_aside_because(a_run({{.lasted_cuts = 5, .struck_reason = "slipped"}})),
            "every edge life is struck out");
}

TEST(TimeData, IsRefusedWhereNoRunIsLeft) {
  const auto data = prepare_times(a_trial_of_lives({a_run({{}})}), {});

  ASSERT_FALSE(data);
  EXPECT_EQ(data.error().kind, base::ProblemKind::unsuitable_data);
}

TEST(TimeData, TestsAreListedByTheRunsTriedByThem) {
  const auto tests = tests_of(a_trial_of_lives({a_run({{.test = "paper"}}),
                                                a_run({{.test = "paper"}, {.test = "hair"}}),
                                                a_run({{.test = "hair"}}),
                                                a_run({{.test = "hair"}})}));

  EXPECT_EQ(tests, (std::vector<TestKey>{{.words = "hair"}, {.words = "paper"}}));
}

// Common practice, no source: what counts is the first failure.
TEST(LadderLives, LastToTheLastPassBeforeTheFirstFailure) {
  const auto life =
      ladder_life(a_ladder({}), on_the_ladder({{0, 6}, {10, 5}, {20, 5}, {30, 4}, {40, 5}}), 5);
  EXPECT_TRUE(life.has_value());
  EXPECT_EQ(life->lasted_cuts, 20);
  EXPECT_EQ(life->failed_by_cuts, 30);
  EXPECT_EQ(life->remarks.size(), 1U);
}

TEST(LadderLives, ATieOfTriesIsAFail) {
  const auto life = ladder_life(a_ladder({}), on_the_ladder({{10, 5}, {10, 4}}), 5);

  EXPECT_EQ(life->failed_by_cuts, 10);
}

TEST(LadderLives, TheRungIsTheOneThatMostRunsPassAndThenFail) {
  const trials::Trial trial = a_ladder(
      {on_the_ladder({{0, 9}, {10, 6}, {20, 4}}), on_the_ladder({{0, 9}, {10, 6}, {20, 5}})});

  EXPECT_EQ(default_rung(trial), 6);
}

TEST(LadderLives, ThereIsNoRungWithoutALadder) {
  EXPECT_EQ(default_rung(a_trial_of_lives({a_run({{.lasted_cuts = 5}})})), std::nullopt);
}

}  // namespace
}  // namespace keenfall::blunting
