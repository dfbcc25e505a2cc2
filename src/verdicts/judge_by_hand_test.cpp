#include "verdicts/judge.h"
#include "verdicts/lasting.h"
#include "verdicts/made_fit.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>
#include <vector>

namespace keenfall::verdicts {
namespace {

using ::testing::HasSubstr;
using ::testing::ThrowsMessage;

constexpr double kLogStart = 4.6;  // as made_fit.h has it
constexpr double kShape = 0.7;

// Blades on one rope, two runs of each, read without error: half keenness after about 40 cuts.
testing::MadeFit read_without_error(std::size_t blades) {
  std::vector<testing::MadeArm> arms(blades);
  for (std::size_t i = 0; i < blades; ++i) {
    arms[i] = {.arm = {.blade = "blade " + std::to_string(i), .medium = {.name = "rope"}},
               .log_half_keenness = std::log(40)};
  }
  testing::MadeFit made = testing::made_fit(arms, 1);
  const std::size_t draws = made.fit.arms.front().shape.size();
  for (std::size_t arm = 0; arm < blades; ++arm) {
    for (const double half_keenness : {38.0, 42.0}) {
      blunting::RunData run{.run = made.trial.runs.size(), .arm = arm};
      for (const double cuts : {0.0, 5.0, 20.0, 40.0, 80.0, 160.0}) {
        run.checkpoints.push_back(
            {.cuts = cuts,
             .log_cuts = std::log(cuts),
             .log_bluntness = kLogStart + std::log1p(std::pow(cuts / half_keenness, kShape))});
      }
      made.data.runs.push_back(std::move(run));
      made.trial.runs.push_back({.name = "1", .arm = made.data.arms[arm]});
      made.fit.runs.push_back(
          {.log_start_median = kLogStart,
           .log_start = blunting::Draws(draws, kLogStart),
           .log_half_keenness = blunting::Draws(draws, std::log(half_keenness))});
    }
  }
  made.fit.run_scatter = {blunting::Draws(draws, 0.1)};
  made.fit.reading_scatter = blunting::Draws(draws, 0.1);
  made.fit.checkpoint_scatter = blunting::Draws(draws, 0.0);
  made.fit.diagnostics.usable = true;
  return made;
}

Judgement judged_by_hand(const testing::MadeFit& made, const Question& question = {}) {
  return judge(made.trial, made.data, made.fit, question, {1});
}

// Closed form: every draw starts at exp(4.6); the reading there has no width.
TEST(JudgeByHand, GivesEveryArmItsCurveFromTheStartToPastWhatWasCut) {
  const Judgement found = judged_by_hand(read_without_error(2));

  for (const ArmResult& arm : found.arms) {
    ASSERT_GE(arm.curve.size(), 3U);
    EXPECT_EQ(arm.curve.front().cuts, 0);
    EXPECT_NEAR(arm.curve.front().reading.median, std::exp(kLogStart), 1e-9);
    EXPECT_FALSE(arm.curve.front().beyond_what_was_cut);
    EXPECT_GT(arm.curve.back().cuts, 160);
    EXPECT_TRUE(arm.curve.back().beyond_what_was_cut);
  }
}

// 25 blades make 300 pairs, 26 make 325.
// Both runs of each blade are read to 160 cuts and half keen after about 40.
TEST(JudgeByHand, CountsTheRunsThatGotToALevel) {
  const Judgement found = judged_by_hand(read_without_error(2), {.stop_level = 1e3});

  for (const ArmResult& arm : found.arms) {
    EXPECT_EQ(arm.half_keenness->runs_that_reached, 2);
    EXPECT_FALSE(arm.half_keenness->beyond_what_was_cut);
    EXPECT_EQ(arm.stop_level->runs_that_reached, 0);
    EXPECT_TRUE(arm.stop_level->beyond_what_was_cut);
  }
}

TEST(JudgeByHand, MissesBlocksOfMoreThanTwoRuns) {
  const auto says_so = [](const Judgement& found) {
    return std::ranges::any_of(found.cannot_say, [](const std::string& sentence) {
      return sentence.starts_with("No blocks are recorded");
    });
  };

  EXPECT_TRUE(says_so(judged_by_hand(read_without_error(2))));
  EXPECT_FALSE(says_so(judged_by_hand(read_without_error(1))));
}

// A millionth of the first checkpoint after the start, which is at 5 cuts.
TEST(NoCutsAtAll, StandFarBeforeTheFirstCheckpoint) {
  EXPECT_NEAR(log_of_no_cuts(read_without_error(1).data), std::log(5e-6), 1e-9);
}

TEST(JudgeByHand, LooksRunByRunAtUpToThreeHundredPairs) {
  const Judgement at_most = judged_by_hand(read_without_error(25));
  const Judgement more = judged_by_hand(read_without_error(26));

  ASSERT_EQ(at_most.comparisons.size(), 300U);
  ASSERT_EQ(more.comparisons.size(), 325U);
  const auto looked_at = [](const Comparison& pair) { return pair.run_by_run.has_value(); };
  EXPECT_TRUE(std::ranges::all_of(at_most.comparisons, looked_at));
  EXPECT_TRUE(std::ranges::none_of(more.comparisons, looked_at));
}

// One blade has no pair, so that nothing later could refuse it.
TEST(JudgeByHand, RefusesAMarginOfOneEvenWhereNothingIsCompared) {
  const testing::MadeFit made = read_without_error(1);

  EXPECT_THAT([&] { (void)judged_by_hand(made, {.worth_it_margin = 1}); },
              ThrowsMessage<std::logic_error>(HasSubstr("a worth-it margin is a ratio above 1")));
}

}  // namespace
}  // namespace keenfall::verdicts
