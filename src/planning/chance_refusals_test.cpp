#include "planning/chance_refusals.h"

#include "planning/made_plan_test.h"

#include <gtest/gtest.h>

#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::planning {
namespace {

std::optional<base::Problem> refused_of(const trials::Plan& plan, const ChancesAsked& asked = {}) {
  return why_no_chances(plan, testing::assumed(), asked);
}

// Empty: not refused.
std::string why_refused(const trials::Plan& plan, const ChancesAsked& asked = {}) {
  const auto problem = refused_of(plan, asked);
  return problem ? problem->sentence : "";
}

TEST(ChanceRefusals, OfASoundPlanAreNone) {
  EXPECT_EQ(refused_of(testing::made_plan()), std::nullopt);
}

TEST(ChanceRefusals, SayBetweenWhichRatiosAMarginLies) {
  const auto plan = testing::made_plan();

  const auto too_high = refused_of(plan, {.worth_it_margin = 101});

  ASSERT_TRUE(too_high);
  EXPECT_EQ(too_high->sentence, "The worth-it margin is 101.");
  EXPECT_EQ(too_high->accepted, "a ratio above 1, up to 100; 1.5 is usual");
  EXPECT_EQ(why_refused(plan, {.worth_it_margin = 1}), "The worth-it margin is 1.");
  EXPECT_EQ(why_refused(plan, {.worth_it_margin = 100}), "");
}

TEST(ChanceRefusals, NameTheRatioThatIsOutOfRangeAmongOthers) {
  const auto plan = testing::made_plan();

  const auto too_high = refused_of(plan, {.true_ratios = {1, 100.5, 2}});

  ASSERT_TRUE(too_high);
  EXPECT_EQ(too_high->sentence, "A true ratio of 100.5 is out of its range.");
  EXPECT_EQ(too_high->accepted, "0.01 to 100");
  EXPECT_EQ(why_refused(plan, {.true_ratios = {0.009}}),
            "A true ratio of 0.009 is out of its range.");
  EXPECT_EQ(why_refused(plan, {.true_ratios = {0.01, 100}}), "");
}

TEST(ChanceRefusals, BoundTheNumberOfTrials) {
  const auto plan = testing::made_plan();

  const auto too_many = refused_of(plan, {.trials = 100'001});

  ASSERT_TRUE(too_many);
  EXPECT_EQ(too_many->sentence, "Chances cannot be told from 100001 trials.");
  EXPECT_EQ(too_many->accepted, "1 to 100000");
  EXPECT_EQ(why_refused(plan, {.trials = 100'000}), "");
}

TEST(ChanceRefusals, AskForCheckpointsThatRiseFromTheStart) {
  auto plan = testing::made_plan();
  constexpr double kInfinite = std::numeric_limits<double>::infinity();
  for (const std::vector<double>& cuts :
       {std::vector<double>{0}, {1, 3, 7}, {0, 7, 7}, {0, 3, kInfinite}, {}}) {
    plan.cuttings[0].checkpoint_cuts = cuts;

    EXPECT_EQ(why_refused(plan), "Checkpoints rise from 0, and there are two at least.");
  }
  plan.cuttings[0].checkpoint_cuts = {0, 7};

  EXPECT_EQ(why_refused(plan), "");
}

TEST(ChanceRefusals, NameAnArmInAMediumThatThePlanDoesNotHave) {
  auto plan = testing::made_plan();
  plan.arms[1].cutting = 3;

  const auto nowhere = refused_of(plan);

  ASSERT_TRUE(nowhere);
  EXPECT_EQ(nowhere->sentence, "There is no such cutting in the plan.");
  EXPECT_EQ(nowhere->accepted, "one of the plan's cuttings");
}

TEST(ChanceRefusals, AskForReadingsAtEachCheckpoint) {
  auto plan = testing::made_plan();
  const auto read = [&plan](int times) {
    plan.reading.repeats = times;
    return why_refused(plan);
  };

  EXPECT_EQ(read(0), "A checkpoint is read 0 times.");
  EXPECT_EQ(read(101), "A checkpoint is read 101 times.");
  EXPECT_EQ(read(1), "");
  EXPECT_EQ(read(100), "");
}

TEST(ChanceRefusals, AskForLooksThatRiseFromTwoRunsToThoseThatArePlanned) {
  auto plan = testing::made_plan(2, 4);
  const auto with_looks = [&plan](std::vector<int> looks) {
    plan.looks = std::move(looks);
    return why_refused(plan);
  };
  const std::string refused =
      "Looks rise from at least 2 runs to at most the runs that are planned.";

  EXPECT_EQ(with_looks({1, 4}), refused);
  EXPECT_EQ(with_looks({3, 3}), refused);
  EXPECT_EQ(with_looks({3, 5}), refused);
  EXPECT_EQ(with_looks({2, 4}), "");
  EXPECT_EQ(with_looks({3}), "");
}

TEST(ChanceRefusals, GiveTheFirstOfWhatCannotBeAssumed) {
  auto assumptions = testing::assumed();
  assumptions.cuttings[0].shape = 3;
  assumptions.true_ratio = 0;

  const auto problem = why_no_chances(testing::made_plan(), assumptions, {});

  ASSERT_TRUE(problem);
  EXPECT_EQ(problem->sentence,
            "The shape of the curve is assumed to be 3, which is out of its range.");
}

}  // namespace
}  // namespace keenfall::planning
