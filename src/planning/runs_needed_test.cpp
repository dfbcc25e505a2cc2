#include "planning/runs_needed.h"

#include "planning/made_plan_test.h"
#include "planning/two_sample_chances.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace keenfall::planning {
namespace {

base::Result<RunsNeeded> needed_at(double ratio,
                                   const Assumptions& assumptions = testing::assumed(),
                                   int trials = 100) {
  return runs_needed(testing::made_plan(),
                     assumptions,
                     {.trials = trials},
                     ratio,
                     base::one_thread(),
                     base::unwatched());
}

// Readings tell a run's half keenness to 0.12 here, so that runs scatter by 0.23 (log sd). By the
// t test 4 runs each show a ratio of 2 (tests/reference/planning.R, log sd 0.25: 4; 0.20: 3).
TEST(RunsNeeded, ForAWideRatioAreAsFewAsATTestNeeds) {
  const auto needed = needed_at(2);

  ASSERT_TRUE(needed);
  ASSERT_TRUE(needed->runs_each);
  EXPECT_GE(*needed->runs_each, 3);
  EXPECT_LE(*needed->runs_each, 5);
  EXPECT_GE(needed->settled.probability, 0.8);
  EXPECT_EQ(needed->true_ratio, 2);
  EXPECT_EQ(needed->trials, 100);
}

TEST(RunsNeeded, AreTheFewestThatDo) {
  const RunsNeeded needed = *needed_at(2);
  auto plan = testing::made_plan(2, *needed.runs_each - 1);

  const auto with_one_less = chances_of(plan,
                                        testing::assumed(),
                                        {.true_ratios = {2}, .trials = 100},
                                        base::one_thread(),
                                        base::unwatched());

  EXPECT_LT(with_one_less->at[0].settled.probability, 0.8);
}

TEST(RunsNeeded, AreTwoWhereTheyAreEnough) { EXPECT_EQ(needed_at(30)->runs_each, 2); }

TEST(RunsNeeded, AreNotSaidBeyondTwenty) {
  const auto needed = needed_at(1.25, testing::assumed(30, 0.9), 20);

  ASSERT_TRUE(needed);
  EXPECT_FALSE(needed->runs_each);
  EXPECT_LT(needed->settled.probability, 0.8);
}

TEST(RunsNeeded, DoNotHeedThePlansOwnRunsAndLooks) {
  auto plan = testing::made_plan(2, 9);
  plan.looks = {3, 9};

  EXPECT_EQ(
      *runs_needed(
          plan, testing::assumed(), {.trials = 100}, 2, base::one_thread(), base::unwatched()),
      *needed_at(2));
}

TEST(RunsNeeded, AreRefusedWhereChancesAre) {
  EXPECT_EQ(needed_at(-1).error().place.column, "true_ratio");
  EXPECT_EQ(needed_at(2, {}).error().place.column, "assumptions");
}

TEST(RunsNeeded, StopWhenAskedTo) {
  const auto needed = runs_needed(testing::made_plan(),
                                  testing::assumed(),
                                  {.trials = 40},
                                  2,
                                  base::one_thread(),
                                  [](const base::Progress&) { return false; });

  ASSERT_FALSE(needed);
  EXPECT_EQ(needed.error().kind, base::ProblemKind::interrupted);
}

TEST(RunsNeeded, ReportThatNeverFallsBack) {
  std::vector<double> seen;
  const auto needed = runs_needed(testing::made_plan(),
                                  testing::assumed(),
                                  {.trials = 20},
                                  2,
                                  base::one_thread(),
                                  [&seen](const base::Progress& progress) {
                                    seen.push_back(progress.fraction_done);
                                    return true;
                                  });

  ASSERT_TRUE(needed);
  EXPECT_TRUE(std::ranges::is_sorted(seen));
  EXPECT_LE(seen.back(), 1);
}

TEST(RunsNeeded, AreRefusedForAMarginThatIsNone) {
  const auto needed = runs_needed(testing::made_plan(),
                                  testing::assumed(),
                                  {.worth_it_margin = 1},
                                  2,
                                  base::one_thread(),
                                  base::unwatched());

  ASSERT_FALSE(needed);
  EXPECT_EQ(needed.error().sentence, "The worth-it margin is 1.");
}

}  // namespace
}  // namespace keenfall::planning
