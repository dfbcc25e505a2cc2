#include "planning/chances.h"

#include "planning/made_plan_test.h"
#include "planning/shuffled_order.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace keenfall::planning {
namespace {

using verdicts::Verdict;

base::Result<PlanChances> chances_with(const trials::Plan& plan,
                                       const ChancesAsked& asked,
                                       const Assumptions& assumptions = testing::assumed()) {
  return chances_of(plan, assumptions, asked, base::one_thread(), base::unwatched());
}

ChancesAsked few(std::vector<double> ratios, int trials = 20) {
  return {.true_ratios = std::move(ratios), .trials = trials};
}

double longer_of(const ChancesAt& at) {
  return at.of(Verdict::longer_and_worth_having).probability + at.of(Verdict::longer).probability +
         at.of(Verdict::longer_but_too_little_to_matter).probability;
}

// Agresti & Coull 1998: two successes and two failures more.
TEST(Chance, HasAnErrorFromTheNumberOfTrials) {
  EXPECT_EQ(chance_from(200, 400).probability, 0.5);
  EXPECT_NEAR(chance_from(200, 400).error, 0.5 / std::sqrt(404.0), 1e-12);
  EXPECT_NEAR(chance_from(100, 400).error, 0.0216, 0.0001);
}

TEST(Chance, OfNoneIsNotTakenForNever) {
  EXPECT_EQ(chance_from(0, 60).probability, 0);
  EXPECT_NEAR(chance_from(0, 60).error, std::sqrt(2.0 / 64 * 62 / 64 / 64), 1e-12);
}

TEST(UsualRatios, RiseFromEqualThroughTheMargin) {
  EXPECT_EQ(usual_ratios(1.5), (std::vector<double>{1, std::sqrt(1.5), 1.5, 2, 3}));
}

TEST(UsualRatios, HoldOnesOwnAndEachOnce) {
  EXPECT_EQ(usual_ratios(2, 1.3), (std::vector<double>{1, 1.3, std::sqrt(2.0), 2, 3}));
  EXPECT_EQ(usual_ratios(1.5, 2), usual_ratios(1.5));
}

TEST(IsWrong, SaysWhatIsNotSo) {
  EXPECT_TRUE(is_wrong(Verdict::longer, 1, 1.5));
  EXPECT_FALSE(is_wrong(Verdict::longer, 1.2, 1.5));
  EXPECT_TRUE(is_wrong(Verdict::shorter, 1.2, 1.5));
  EXPECT_TRUE(is_wrong(Verdict::longer_and_worth_having, 1.4, 1.5));
  EXPECT_FALSE(is_wrong(Verdict::longer_and_worth_having, 1.6, 1.5));
  EXPECT_TRUE(is_wrong(Verdict::longer_but_too_little_to_matter, 1.6, 1.5));
  EXPECT_FALSE(is_wrong(Verdict::longer_but_too_little_to_matter, 1.4, 1.5));
  EXPECT_TRUE(is_wrong(Verdict::practically_the_same, 1.5, 1.5));
  EXPECT_FALSE(is_wrong(Verdict::practically_the_same, 1.4, 1.5));
  EXPECT_TRUE(is_wrong(Verdict::practically_the_same, 0.6, 1.5));
  EXPECT_TRUE(is_wrong(Verdict::shorter_but_too_little_to_matter, 1, 1.5));
  EXPECT_FALSE(is_wrong(Verdict::shorter_by_enough_to_matter, 0.5, 1.5));
  EXPECT_FALSE(is_wrong(Verdict::not_settled, 100, 1.5));
}

TEST(IsWrong, SaysSoOfShorterLivesToo) {
  EXPECT_FALSE(is_wrong(Verdict::shorter_but_too_little_to_matter, 0.8, 1.5));
  EXPECT_TRUE(is_wrong(Verdict::shorter_but_too_little_to_matter, 0.6, 1.5));
  EXPECT_TRUE(is_wrong(Verdict::shorter_by_enough_to_matter, 0.7, 1.5));
  EXPECT_FALSE(is_wrong(Verdict::shorter, 0.9, 1.5));
}

TEST(Chances, OfAllVerdictsAddUpToOne) {
  const auto chances = chances_with(testing::made_plan(), few({1, 2}));

  ASSERT_TRUE(chances);
  EXPECT_EQ(chances->trials, 20);
  for (const ChancesAt& at : chances->at) {
    double sum = 0;
    for (const Chance& chance : at.verdicts) sum += chance.probability;
    EXPECT_NEAR(sum, 1, 1e-12);
    EXPECT_NEAR(at.settled.probability, 1 - at.of(Verdict::not_settled).probability, 1e-12);
  }
}

TEST(Chances, AreTheSameOnOneThreadAndOnMany) {
  const auto plan = testing::made_plan(2, 3);
  const auto one =
      chances_of(plan, testing::assumed(), few({1, 1.5}), base::one_thread(), base::unwatched());
  const auto many =
      chances_of(plan, testing::assumed(), few({1, 1.5}), base::threads(3), base::unwatched());

  EXPECT_EQ(*one, *many);
}

TEST(Chances, AreOtherOnesWithAnotherSeed) {
  auto other = few({1.3}, 60);
  other.seed = {2};

  EXPECT_NE(chances_with(testing::made_plan(), few({1.3}, 60))->at,
            chances_with(testing::made_plan(), other)->at);
}

TEST(Chances, AreToldByRisingRatio) {
  const auto chances = *chances_with(testing::made_plan(2, 2), few({3, 1, 2}, 3));

  ASSERT_EQ(chances.at.size(), 3U);
  EXPECT_EQ(chances.at[0].true_ratio, 1);
  EXPECT_EQ(chances.at[2].true_ratio, 3);
}

TEST(Chances, OfAWideRatioAreThatItIsLongerAndWorthHaving) {
  const auto chances = *chances_with(testing::made_plan(2, 6), few({5}));

  EXPECT_EQ(chances.at[0].of(Verdict::longer_and_worth_having).probability, 1);
  EXPECT_EQ(chances.at[0].wrong.probability, 0);
}

TEST(Chances, OfTheTurnedRatioAreThatItIsShorter) {
  const auto chances = *chances_with(testing::made_plan(2, 6), few({0.2}));

  EXPECT_EQ(chances.at[0].of(Verdict::shorter_by_enough_to_matter).probability, 1);
}

TEST(Chances, OfSettlingGrowWithTheRuns) {
  const auto with_runs = [](int runs_each) {
    return chances_with(testing::made_plan(2, runs_each), few({1.5}, 60))
        ->at[0]
        .settled.probability;
  };

  EXPECT_LT(with_runs(2), with_runs(4));
  EXPECT_LT(with_runs(4), with_runs(8));
}

TEST(Chances, OfALongerLifeFallWithMoreArmsBesideIt) {
  EXPECT_GT(longer_of(chances_with(testing::made_plan(2, 4), few({1.7}, 60))->at[0]),
            longer_of(chances_with(testing::made_plan(5, 4), few({1.7}, 60))->at[0]));
}

TEST(Chances, OfAPlanWithLooksNeedFewerRunsWhereTheRatioIsWide) {
  auto plan = testing::made_plan(2, 9);
  plan.looks = {3, 6, 9};

  const auto at = chances_with(plan, few({1, 4}))->at;

  EXPECT_EQ(at[1].runs_each, 3);
  EXPECT_GT(at[0].runs_each, 3);
  EXPECT_LE(at[0].runs_each, 9);
}

TEST(Chances, OfOneLookUseAllRuns) {
  EXPECT_EQ(chances_with(testing::made_plan(2, 4), few({4}, 3))->at[0].runs_each, 4);
}

TEST(Chances, AreKnownOfKindsWhereHigherIsKeener) {
  auto asked = few({5}, 10);
  asked.kind = *trials::find_reading_kind("card_bite");
  auto plan = testing::made_plan(2, 6);
  plan.reading.kind = "card_bite";
  auto assumptions = testing::assumed();
  assumptions.start_reading = 12;

  EXPECT_EQ(chances_with(plan, asked, assumptions)
                ->at[0]
                .of(Verdict::longer_and_worth_having)
                .probability,
            1);
}

TEST(Chances, OfReadingsThatTellNothingAreNotSettled) {
  auto plan = testing::made_plan(2, 3);
  plan.cuttings[0].checkpoint_cuts = {0, 1};

  const auto chances = chances_with(plan, few({2}, 5), testing::assumed(100'000));

  EXPECT_EQ(chances->at[0].of(Verdict::not_settled).probability, 1);
}

TEST(Chances, AreToldOfTheUsualRatiosWhereNoneIsAskedFor) {
  const auto chances = *chances_with(testing::made_plan(2, 2), few({}, 2));

  std::vector<double> told;
  for (const ChancesAt& at : chances.at) told.push_back(at.true_ratio);
  EXPECT_EQ(told, usual_ratios(1.5));
}

// The plan's own seed shuffles it, so its own order is that of a plan that is not shuffled yet.
TEST(Chances, AreThoseOfThePlansOwnOrderAndOfNoOther) {
  const auto unshuffled = testing::made_plan(2, 4);
  const auto chances = *chances_with(unshuffled, few({1.3}, 60));
  auto shuffled = unshuffled;
  shuffled.runs = *shuffled_order(unshuffled, {});
  auto turned = shuffled;
  for (trials::PlannedRun& run : turned.runs) run.arm = 1 - run.arm;
  auto foreign = shuffled;
  for (trials::PlannedRun& run : foreign.runs) run.arm = 0;

  EXPECT_EQ(*chances_with(shuffled, few({1.3}, 60)), chances);
  EXPECT_NE(*chances_with(turned, few({1.3}, 60)), chances);
  EXPECT_EQ(*chances_with(foreign, few({1.3}, 60)), chances);
}

TEST(Chances, OfRunsBeyondTheLastLookAreOfOneLookMore) {
  auto without_end = testing::made_plan(2, 6);
  without_end.looks = {3};
  auto with_end = testing::made_plan(2, 6);
  with_end.looks = {3, 6};

  EXPECT_EQ(*chances_with(without_end, few({1.3}, 10)), *chances_with(with_end, few({1.3}, 10)));
}

TEST(Chances, AreWholeWhereTheStopCameAfterTheLastTrial) {
  const auto chances =
      chances_of(testing::made_plan(2, 2),
                 testing::assumed(),
                 few({2}, 12),
                 base::one_thread(),
                 [](const base::Progress& progress) { return progress.fraction_done < 1; });

  ASSERT_TRUE(chances);
  EXPECT_EQ(*chances, *chances_with(testing::made_plan(2, 2), few({2}, 12)));
}

TEST(Chances, RefuseAPlanWithoutRuns) {
  EXPECT_EQ(chances_with(testing::made_plan(2, 0), few({1})).error().sentence,
            "0 runs of each of 2 arms cannot be put in order.");
}

TEST(Chances, StopWhenAskedTo) {
  const auto chances = chances_of(testing::made_plan(),
                                  testing::assumed(),
                                  few({1, 2}),
                                  base::one_thread(),
                                  [](const base::Progress&) { return false; });

  ASSERT_FALSE(chances);
  EXPECT_EQ(chances.error().kind, base::ProblemKind::interrupted);
}

TEST(Chances, ReportHowFarTheyAre) {
  std::vector<double> seen;
  const auto chances = chances_of(testing::made_plan(2, 2),
                                  testing::assumed(),
                                  few({1, 2}),
                                  base::one_thread(),
                                  [&seen](const base::Progress& progress) {
                                    seen.push_back(progress.fraction_done);
                                    return true;
                                  });

  ASSERT_TRUE(chances);
  ASSERT_EQ(seen.size(), 2U * static_cast<std::size_t>(chances->trials));  // after each of them
  EXPECT_TRUE(std::ranges::is_sorted(seen));
  EXPECT_EQ(seen.back(), 1);
}

TEST(Chances, NeedTwoArms) {
  const auto chances = chances_with(testing::made_plan(1), few({1}));

  ASSERT_FALSE(chances);
  EXPECT_EQ(chances.error().sentence, "With one arm there is nothing to compare.");
}

TEST(Chances, RefuseTwoArmsThatAreTheSame) {
  auto plan = testing::made_plan();
  plan.arms[1] = plan.arms[0];

  EXPECT_EQ(chances_with(plan, few({1})).error().sentence,
            "Two arms are the same: the blade A with the same edge.");
}

TEST(Chances, RefuseWhatCannotBe) {
  const auto plan = testing::made_plan();
  auto fallen = plan;
  fallen.cuttings[0].checkpoint_cuts = {0, 7, 3};
  auto looks = plan;
  looks.looks = {3, 9};
  const auto evidence = ChancesAsked{.trials = 5, .kind = *trials::find_reading_kind("chip_count")};

  EXPECT_EQ(chances_with(fallen, few({1})).error().place.column, "checkpoint_cuts");
  EXPECT_EQ(chances_with(looks, few({1})).error().place.column, "looks");
  EXPECT_EQ(chances_with(plan, few({1}), {}).error().place.column, "assumptions");
  EXPECT_EQ(chances_with(plan, few({0})).error().place.column, "true_ratio");
  EXPECT_EQ(chances_with(plan, few({1}, 0)).error().place.column, "trials");
  EXPECT_EQ(chances_with(plan, {.worth_it_margin = 1}).error().place.column, "worth_it_margin");
  EXPECT_EQ(chances_with(plan, {.cutting = 1}).error().place.column, "cutting");
  EXPECT_EQ(chances_with(plan, evidence).error().place.column, "kind");
}

}  // namespace
}  // namespace keenfall::planning
