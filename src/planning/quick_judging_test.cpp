#include "planning/quick_judging.h"

#include "blunting/quick/quick_fit.h"
#include "blunting/simulated_pair.h"
#include "planning/imagined_trial.h"
#include "planning/made_plan_test.h"
#include "planning/shuffled_order.h"
#include "verdicts/compare.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace keenfall::planning {
namespace {

const blunting::SeriesKey kThreadPush{.kind = "thread_push", .thread = ""};

trials::Trial trial_of_three(std::uint64_t seed) {
  auto plan = testing::made_plan(3, 4);
  plan.runs = *shuffled_order(plan, {});
  const auto assumptions = testing::assumed();
  numerics::RandomStream random({seed}, 0);
  return imagined_trial(
      {.plan = plan, .assumptions = assumptions, .kind = *trials::find_reading_kind("thread_push")},
      random);
}

// What a judgement's comparisons would say from the same draws.
verdicts::Comparison compared(const trials::Trial& trial, const AskedPair& pair) {
  const auto spec = blunting::default_model();
  const auto data = *blunting::prepare(trial, kThreadPush, spec.errors);
  const auto all = verdicts::compare_all(trial, data, blunting::quick_draws(data, spec), {}, {1});
  return *std::ranges::find_if(all, [&](const verdicts::Comparison& each) {
    return (data.arms[each.a] == pair.a && data.arms[each.b] == pair.b) ||
           (data.arms[each.a] == pair.b && data.arms[each.b] == pair.a);
  });
}

TEST(QuickRatio, OfThreeArmsIsThatOfAJudgementWithItsIntervalsTogether) {
  const auto trial = trial_of_three(7);
  const auto arms = arms_of(trial);
  const auto find = [&arms](const char* blade) {
    return *std::ranges::find(arms, blade, &trials::Arm::blade);
  };
  const AskedPair pair{.a = find("A"), .b = find("C")};

  const auto ratio = quick_ratio(trial, kThreadPush, {}, pair);

  ASSERT_TRUE(ratio);
  const auto comparison = compared(trial, pair);
  ASSERT_EQ(comparison.family_size, 3);
  ASSERT_GT(ratio->median, 1);
  EXPECT_NEAR(ratio->median, comparison.ratio.median, 1e-12);
  EXPECT_NEAR(ratio->bounds.lo95, comparison.simultaneous.lo95, 1e-12);
  EXPECT_NEAR(ratio->bounds.hi90, comparison.simultaneous.hi90, 1e-12);
}

TEST(QuickRatio, TurnedRoundIsTheReciprocal) {
  const auto trial = blunting::simulated({.ratio = 1.6}, 3);
  const auto arms = arms_of(trial);

  const auto one = quick_ratio(trial, kThreadPush, {}, {.a = arms[0], .b = arms[1]});
  const auto other = quick_ratio(trial, kThreadPush, {}, {.a = arms[1], .b = arms[0]});

  ASSERT_TRUE(one && other);
  EXPECT_NEAR(one->median * other->median, 1, 1e-9);
  EXPECT_NEAR(one->bounds.lo95 * other->bounds.hi95, 1, 1e-9);
}

TEST(QuickRatio, IsThatAtTheLevelAskedFor) {
  const auto trial = blunting::simulated({.ratio = 1.6}, 3);
  const auto arms = arms_of(trial);
  const AskedPair pair{.a = arms[0], .b = arms[1]};

  const auto at_half = quick_ratio(trial, kThreadPush, {}, pair);
  const auto at_four = quick_ratio(trial, kThreadPush, {.stop_level = 4}, pair);

  EXPECT_NE(at_half->median, at_four->median);
}

TEST(QuickRatio, IsAbsentOfAnArmThatWasNotCut) {
  const auto trial = blunting::simulated({}, 3);
  const auto arms = arms_of(trial);

  EXPECT_FALSE(quick_ratio(trial, kThreadPush, {}, {.a = arms[0], .b = {.blade = "Z"}}));
}

TEST(QuickRatio, IsAskedOfReadingsThatThereAre) {
  const auto trial = blunting::simulated({}, 3);
  const auto arms = arms_of(trial);

  EXPECT_THROW((void)quick_ratio(
                   trial, {.kind = "rope_press", .thread = ""}, {}, {.a = arms[0], .b = arms[1]}),
               std::logic_error);
}

// The claim about steels takes several pieces of both, as in a judgement.
TEST(QuickRatio, OfSeveralPiecesOfEachIsAboutTheSteels) {
  const auto trial = blunting::simulated(
      {.ratio = 2, .runs_each = 6, .specimens_each = 3, .specimen_scatter = 0.2}, 3);
  const auto arms = arms_of(trial);
  const AskedPair pair{.a = arms[0], .b = arms[1]};

  const auto of_steels = quick_ratio(trial, kThreadPush, {}, pair);
  const auto of_pieces =
      quick_ratio(trial, kThreadPush, {.claim = verdicts::ClaimAbout::these_blades}, pair);

  ASSERT_TRUE(of_steels && of_pieces);
  const auto comparison = compared(trial, pair);
  ASSERT_EQ(comparison.claim_about, verdicts::ClaimAbout::the_steels);
  ASSERT_GT(of_steels->median, 1);
  EXPECT_NEAR(of_steels->bounds.hi95, comparison.simultaneous.hi95, 1e-12);
  EXPECT_GT(of_steels->bounds.hi95, of_pieces->bounds.hi95);
}

TEST(QuickRatio, IsAbsentWhereEveryRunIsVoided) {
  auto trial = blunting::simulated({}, 3);
  const auto arms = arms_of(trial);
  for (trials::Run& run : trial.runs) run.voided_reason = "the scale was not zeroed";

  EXPECT_FALSE(quick_ratio(trial, kThreadPush, {}, {.a = arms[0], .b = arms[1]}));
}

}  // namespace
}  // namespace keenfall::planning
