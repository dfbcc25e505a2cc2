#include "planning/rough_chances.h"

#include "planning/made_plan_test.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

namespace keenfall::planning {
namespace {

using verdicts::Verdict;

// Read so well that runs scatter by what is assumed of them alone.
trials::Plan well_read(int runs_each, int arms = 2) {
  trials::Plan plan = testing::made_plan(arms, runs_each);
  plan.reading.repeats = 100;
  return plan;
}

Assumptions hardly_read_wrong(double run_log_sd = 0.2) {
  Assumptions assumptions = testing::assumed(30, run_log_sd);
  assumptions.reading_log_sd = 0.001;
  assumptions.spot_log_sd = 0;
  return assumptions;
}

double told_apart(const ChancesAt& at) {
  return 1 - at.of(Verdict::not_settled).probability -
         at.of(Verdict::practically_the_same).probability;
}

// tests/reference/planning.R: power.t.test(strict = TRUE), log sd 0.2.
TEST(RoughChances, AreThoseOfATTest) {
  const auto three =
      rough_chances(well_read(3), hardly_read_wrong(), {.true_ratios = {2, 1.5}, .blades = {}});
  const auto six =
      rough_chances(well_read(6), hardly_read_wrong(), {.true_ratios = {1.25, 1.5}, .blades = {}});

  ASSERT_TRUE(three && six);
  EXPECT_NEAR(told_apart(three->at[0]), 0.47233, 0.002);
  EXPECT_NEAR(told_apart(three->at[1]), 0.88049, 0.002);
  EXPECT_NEAR(told_apart(six->at[0]), 0.41585, 0.002);
  EXPECT_NEAR(told_apart(six->at[1]), 0.88481, 0.002);
}

TEST(RoughChances, AreOneVerdictAlwaysAndNoTrials) {
  const auto chances = rough_chances(well_read(4), hardly_read_wrong(), {.blades = {}});

  ASSERT_TRUE(chances);
  EXPECT_EQ(chances->trials, 0);
  ASSERT_EQ(chances->at.size(), usual_ratios(1.5).size());
  for (const ChancesAt& at : chances->at) {
    const double sum = std::accumulate(
        at.verdicts.begin(), at.verdicts.end(), 0.0, [](double so_far, const Chance& chance) {
          return so_far + chance.probability;
        });
    EXPECT_NEAR(sum, 1, 1e-9);
    EXPECT_NEAR(at.settled.probability, 1 - at.of(Verdict::not_settled).probability, 1e-9);
  }
  // Where both last equally long, whoever is called longer, shorter or anything between is wrong.
  EXPECT_NEAR(chances->at.front().wrong.probability, told_apart(chances->at.front()), 1e-9);
}

TEST(RoughChances, AreFewerWhereRunsAreReadPoorly) {
  trials::Plan plan = well_read(3);
  plan.reading.repeats = 1;
  Assumptions poorly = hardly_read_wrong();
  poorly.reading_log_sd = 0.3;
  const ChancesAsked asked{.true_ratios = {2}, .blades = {}};

  EXPECT_LT(rough_chances(plan, poorly, asked)->at[0].settled.probability,
            rough_chances(well_read(3), hardly_read_wrong(), asked)->at[0].settled.probability);
}

TEST(RoughChances, AreNotKnownOfOneRunEachOrOneArm) {
  EXPECT_EQ(rough_chances(well_read(1), hardly_read_wrong(), {.blades = {}}).error().sentence,
            "With one run each nobody knows how much runs scatter.");
  EXPECT_EQ(rough_chances(well_read(3, 1), hardly_read_wrong(), {.blades = {}}).error().sentence,
            "With one arm there is nothing to compare.");
}

// tests/reference/planning.R: fewest runs for a power of 80 % at a ratio of 2.
TEST(RoughRunsNeeded, AreThoseOfATTestWhereTheRatioIsWide) {
  EXPECT_EQ(rough_runs_needed(well_read(9), hardly_read_wrong(0.25), {.blades = {}}, 2)->runs_each,
            4);
  EXPECT_EQ(rough_runs_needed(well_read(9), hardly_read_wrong(0.4), {.blades = {}}, 2)->runs_each,
            7);
}

TEST(RoughRunsNeeded, AreMoreThanAnyoneCutsWhereRunsScatterTooMuch) {
  const auto needed = rough_runs_needed(well_read(9), hardly_read_wrong(1.5), {.blades = {}}, 1.2);

  ASSERT_TRUE(needed);
  EXPECT_FALSE(needed->runs_each);
  EXPECT_LT(needed->settled.probability, kChanceWanted);
}

TEST(RoughRunsNeeded, AreRefusedWhereTheRatioIsOutOfItsRange) {
  EXPECT_FALSE(rough_runs_needed(well_read(3), hardly_read_wrong(), {.blades = {}}, 0));
}

}  // namespace
}  // namespace keenfall::planning
