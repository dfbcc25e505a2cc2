#include "workbench/plan_prospects.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <mutex>
#include <optional>

namespace keenfall::workbench {
namespace {

using ::testing::Contains;
using ::testing::EndsWith;
using ::testing::HasSubstr;

PlanInHand looked_at(const std::vector<std::string>& media, int arms_each, int runs_each) {
  trials::Plan plan{.reading = {.repeats = 3}, .stop = {.level = 4}, .runs_each = runs_each};
  for (std::size_t c = 0; c < media.size(); ++c) {
    plan.cuttings.push_back(
        {.medium = {.name = media[c]}, .checkpoint_cuts = {0, 1, 3, 7, 15, 31, 63, 127}});
    for (int arm = 0; arm < arms_each; ++arm) {
      plan.arms.push_back({.blade = std::string(1, static_cast<char>('A' + arm)), .cutting = c});
    }
  }
  return *plan_in_hand({.plan = plan, .claims = {}, .assumptions = {}, .bench_times = {}}, {});
}

TEST(RoughChances, TellEveryMediumByItself) {
  const auto told = rough_chances_told(looked_at({"sisal", "rope"}, 2, 6));

  ASSERT_TRUE(told);
  ASSERT_EQ(told->cuttings.size(), 2U);
  EXPECT_EQ(told->trials, 0);
  EXPECT_EQ(told->cuttings[1].words, "rope");
  EXPECT_EQ(told->cuttings[1].first_arm, "A");
  EXPECT_EQ(told->cuttings[1].last_arm, "B");
  EXPECT_THAT(told->cuttings[1].sentence, HasSubstr("if both last equally long and "));
  EXPECT_TRUE(told->sentence.starts_with("In sisal, of 100 such trials about "));
  EXPECT_THAT(told->sentence, HasSubstr("1.5 times as long. In rope, of 100 such trials about "));
  EXPECT_THAT(told->cuttings[0].runs_needed_words, HasSubstr(" runs each would settle it"));
}

TEST(RoughChances, SayWhatTheyLeaveOut) {
  PlanInHand three_arms = looked_at({"sisal"}, 3, 6);
  three_arms.plan.looks = {3, 6};

  const auto told = rough_chances_told(three_arms);

  ASSERT_TRUE(told);
  EXPECT_THAT(told->rests_on, Contains(HasSubstr("runs to scatter by 22 % (a log sd of 0.2)")));
  EXPECT_THAT(told->rests_on, Contains(HasSubstr("the first arm of a medium against the last")));
  EXPECT_THAT(told->rests_on, Contains(HasSubstr("all arms of a medium are compared together")));
  EXPECT_THAT(told->rests_on, Contains("Left out are also the looks before the end."));
}

TEST(RoughChances, OfOneArmAreNone) {
  const auto told = rough_chances_told(looked_at({"sisal"}, 1, 3));

  ASSERT_TRUE(told);
  EXPECT_TRUE(told->cuttings.empty());
  EXPECT_THAT(told->sentence, HasSubstr("how much your own runs scatter"));
}

// Two ways to the same: the closed form leaves out what scatters little here, and takes no priors.
TEST(ImaginedChances, AgreeWithTheRoughOnesWhereRunsAloneScatter) {
  PlanInHand plan = looked_at({"sisal"}, 2, 6);
  plan.assumptions.start_log_sd = 0;
  plan.assumptions.block_log_sd = 0;

  const auto rough = rough_chances_told(plan);
  const auto imagined = chances_told(
      plan, {.for_chances = 100, .for_runs_needed = 60}, base::threads(2), base::unwatched());

  ASSERT_TRUE(rough && imagined);
  EXPECT_EQ(imagined->trials, 100);
  const auto& roughly = rough->cuttings[0].chances.at;
  const auto& better = imagined->cuttings[0].chances.at;
  ASSERT_EQ(better.size(), roughly.size());
  for (std::size_t r = 0; r < better.size(); ++r) {
    EXPECT_NEAR(better[r].settled.probability, roughly[r].settled.probability, 0.15)
        << better[r].true_ratio;
  }
  ASSERT_TRUE(rough->cuttings[0].runs_needed.runs_each);
  ASSERT_TRUE(imagined->cuttings[0].runs_needed.runs_each);
  EXPECT_NEAR(
      *imagined->cuttings[0].runs_needed.runs_each, *rough->cuttings[0].runs_needed.runs_each, 2);
}

TEST(ImaginedChances, TellHowFarTheyAreThroughAllMedia) {
  PlanInHand plan = looked_at({"sisal", "rope"}, 2, 2);
  std::mutex mutex;
  double last = 0;
  bool rises = true;

  const auto told = chances_told(plan,
                                 {.for_chances = 20, .for_runs_needed = 20},
                                 base::one_thread(),
                                 [&](const base::Progress& progress) {
                                   const std::lock_guard lock(mutex);
                                   rises = rises && progress.fraction_done >= last;
                                   last = progress.fraction_done;
                                   return true;
                                 });

  ASSERT_TRUE(told);
  EXPECT_EQ(told->cuttings.size(), 2U);
  EXPECT_TRUE(rises);
  EXPECT_GT(last, 0.8);
  EXPECT_LE(last, 1);
}

TEST(ImaginedChances, StopWhenAskedTo) {
  const auto told = chances_told(
      looked_at({"sisal"}, 2, 3), {}, base::one_thread(), [](const base::Progress& progress) {
        return progress.fraction_done < 0.05;
      });

  ASSERT_FALSE(told);
  EXPECT_EQ(told.error().kind, base::ProblemKind::interrupted);
}

TEST(PlanCost, IsCountedFromWhatIsAssumed) {
  PlanInHand plan = looked_at({"sisal"}, 2, 6);
  plan.bench_times.sharpening_minutes_per_run = 0;

  const auto told = cost_told(plan);

  EXPECT_EQ(told.cost.runs, 12);
  EXPECT_EQ(told.cost.cuts.most, 12 * 127);
  // 127 cuts of 4 s and 8 checkpoints of 3 readings of 15 s.
  EXPECT_DOUBLE_EQ(told.cost.minutes_per_run.most, (127 * 4 + 8 * 3 * 15) / 60.0);
  EXPECT_FALSE(told.cost.stock_m);
}

TEST(RoughChances, OfATrialTooLargeToImagineAreRefused) {
  PlanInHand plan = looked_at({"sisal"}, 2, 6);
  plan.plan.runs_each = 1000;
  plan.plan.reading.repeats = 100;

  const auto told = rough_chances_told(plan);

  ASSERT_FALSE(told);
  EXPECT_EQ(told.error().kind, base::ProblemKind::too_large);
  EXPECT_THAT(told.error().accepted, EndsWith("250000 in all or fewer"));
}

}  // namespace
}  // namespace keenfall::workbench
