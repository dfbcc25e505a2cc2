#include "planning/imagined_trial.h"

#include "numerics/summaries.h"
#include "planning/made_plan_test.h"
#include "planning/shuffled_order.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace keenfall::planning {
namespace {

const trials::ReadingKind& thread_push() { return *trials::find_reading_kind("thread_push"); }

trials::Plan shuffled(trials::Plan plan, const std::vector<trials::Blade>& blades = {}) {
  plan.runs = *shuffled_order(plan, blades);
  return plan;
}

trials::Trial made(const trials::Plan& plan,
                   const Assumptions& assumptions,
                   const trials::ReadingKind& kind = thread_push(),
                   std::uint64_t seed = 1) {
  numerics::RandomStream random({seed}, 0);
  return imagined_trial({.plan = plan, .assumptions = assumptions, .kind = kind}, random);
}

// Nothing scatters.
Assumptions exact(double half_keenness_cuts, double shape = 1) {
  return {.cuttings = {{.half_keenness_cuts = half_keenness_cuts, .shape = shape, .run_log_sd = 0}},
          .true_ratio = 4,
          .start_log_sd = 0,
          .block_log_sd = 0,
          .specimen_log_sd = 0,
          .spot_log_sd = 0,
          .reading_log_sd = 0};
}

TEST(ImaginedTrial, HasTheRunsOfThePlanInTheirOrder) {
  const auto plan = shuffled(testing::made_plan(3, 4));

  const auto trial = made(plan, testing::assumed());

  ASSERT_EQ(trial.runs.size(), 12U);
  for (std::size_t r = 0; r < trial.runs.size(); ++r) {
    EXPECT_EQ(trial.runs[r].arm.blade, plan.arms[plan.runs[r].arm].blade);
    EXPECT_EQ(trial.runs[r].order, plan.runs[r].order);
    EXPECT_EQ(trial.runs[r].block, std::to_string(plan.runs[r].block));
  }
  EXPECT_EQ(trial.blades.size(), 3U);
  EXPECT_EQ(arms_of(trial).size(), 3U);
}

// b = b0 (1 + x / tau): 104 (1 + x / 60) for A, (1 + x / 15) for B, by hand.
TEST(ImaginedTrial, WithoutScatterFollowsTheCurve) {
  auto plan = shuffled(testing::made_plan(2, 1));
  plan.stop = {};

  const auto trial = made(plan, exact(30));

  for (const auto& run : trial.runs) {
    const double half = run.arm.blade == "A" ? 60 : 15;
    for (const auto& reading : run.readings) {
      EXPECT_NEAR(reading.reading, 104 * (1 + reading.cuts / half), 1e-9);
    }
    EXPECT_EQ(run.readings.back().cuts, 127);
    EXPECT_EQ(run.readings.size(), 24U);
  }
}

// B reads 4 times its start at 45 cuts, so its run stops when it is read at 63.
TEST(ImaginedTrial, StopsARunAtTheFirstCheckpointBeyondTheLevel) {
  const auto trial = made(shuffled(testing::made_plan(2, 1)), exact(30));

  for (const auto& run : trial.runs) {
    EXPECT_EQ(run.readings.back().cuts, run.arm.blade == "B" ? 63 : 127);
  }
}

TEST(ImaginedTrial, StopsARunAtAReadingToo) {
  auto plan = shuffled(testing::made_plan(2, 1));
  plan.stop = {.reading = 4 * 104};

  for (const auto& run : made(plan, exact(30)).runs) {
    EXPECT_EQ(run.readings.back().cuts, run.arm.blade == "B" ? 63 : 127);
  }
}

TEST(ImaginedTrial, ReadsLessAndLessWhereHigherIsKeener) {
  auto plan = shuffled(testing::made_plan(2, 1));
  plan.stop = {.level = 4};
  auto assumptions = exact(30);
  assumptions.start_reading = 12;

  const auto trial = made(plan, assumptions, *trials::find_reading_kind("card_bite"));

  for (const auto& run : trial.runs) {
    const double half = run.arm.blade == "A" ? 60 : 15;
    for (const auto& reading : run.readings) {
      EXPECT_NEAR(reading.reading, 12 / (1 + reading.cuts / half), 1e-9);
    }
    EXPECT_EQ(run.readings.back().cuts, run.arm.blade == "B" ? 63 : 127);
  }
}

// Simulate and recover: half keenness of a run from its own exact readings, b(x) = b0 (1 + x /
// tau).
TEST(ImaginedTrial, ScattersRunsAndBlocksAsAssumed) {
  auto plan = shuffled(testing::made_plan(2, 1000));
  plan.stop = {};
  auto assumptions = exact(30);
  assumptions.cuttings[0].run_log_sd = 0.2;
  assumptions.block_log_sd = 0.1;

  std::vector<double> of_a(1000);
  std::vector<double> of_b(1000);
  for (const auto& run : made(plan, assumptions).runs) {
    const auto block = static_cast<std::size_t>(std::stoi(run.block) - 1);
    const auto& last = run.readings.back();
    (run.arm.blade == "A" ? of_a : of_b)[block] =
        std::log(last.cuts / (last.reading / run.readings.front().reading - 1));
  }
  std::vector<double> differences;
  for (std::size_t i = 0; i < of_a.size(); ++i) differences.push_back(of_a[i] - of_b[i]);

  // Errors of an sd from 1,000: 2.2 %; three of them.
  EXPECT_NEAR(std::sqrt(numerics::variance_of(of_a)), std::hypot(0.2, 0.1), 0.015);
  EXPECT_NEAR(std::sqrt(numerics::variance_of(differences)), 0.2 * std::sqrt(2.0), 0.019);
  EXPECT_NEAR(numerics::mean_of(differences), std::log(4), 0.027);
}

TEST(ImaginedTrial, GivesAPieceTheSameLuckInAllItsRuns) {
  const std::vector<trials::Blade> blades{{.name = "A", .specimens = {{.name = "1"}, {"2"}}},
                                          {.name = "B", .specimens = {{.name = "1"}, {"2"}}}};
  const auto plan = shuffled(testing::made_plan(2, 6), blades);
  auto assumptions = exact(30);
  assumptions.specimen_log_sd = 0.3;

  std::set<std::string> distinct;
  for (const auto& run : made(plan, assumptions).runs) {
    distinct.insert(run.arm.blade + run.specimen + ": " + std::to_string(run.readings[20].reading));
  }

  EXPECT_EQ(distinct.size(), 4U);
}

TEST(ImaginedTrial, DrawsTheSameLuckWhateverTheRatio) {
  const auto plan = shuffled(testing::made_plan(2, 3));
  auto one = testing::assumed();
  auto other = testing::assumed();
  other.true_ratio = 9 * one.true_ratio;

  const auto first = made(plan, one).runs;
  const auto second = made(plan, other).runs;

  for (std::size_t r = 0; r < first.size(); ++r) {
    EXPECT_DOUBLE_EQ(first[r].readings[0].reading, second[r].readings[0].reading);
  }
}

TEST(ImaginedTrial, NeedsACuttingWithCheckpoints) {
  auto plan = shuffled(testing::made_plan());
  plan.cuttings[0].checkpoint_cuts.clear();

  EXPECT_THROW((void)made(plan, testing::assumed()), std::logic_error);
  EXPECT_THROW((void)made(testing::made_plan(), {}), std::logic_error);
}

// 12 / (1 + x / tau) is 3 at 3 tau: 45 cuts for B, 180 for A.
TEST(ImaginedTrial, StopsWhereTheReadingHasFallenWhereHigherIsKeener) {
  auto plan = shuffled(testing::made_plan(2, 1));
  plan.stop = {.reading = 3};
  auto assumptions = exact(30);
  assumptions.start_reading = 12;

  for (const auto& run : made(plan, assumptions, *trials::find_reading_kind("card_bite")).runs) {
    EXPECT_EQ(run.readings.back().cuts, run.arm.blade == "B" ? 63 : 127);
  }
}

TEST(ImaginedTrial, NeedsReadingsAndACuttingOfThePlan) {
  auto unread = shuffled(testing::made_plan());
  unread.reading.repeats = 0;
  auto of_two = testing::assumed();
  of_two.cuttings.resize(2);
  numerics::RandomStream random({1}, 0);

  EXPECT_THROW((void)made(unread, testing::assumed()), std::logic_error);
  EXPECT_THROW((void)imagined_trial({.plan = testing::made_plan(),
                                     .assumptions = of_two,
                                     .kind = thread_push(),
                                     .cutting = 1},
                                    random),
               std::logic_error);
}

TEST(FirstBlocks, AreTheTrialAsItStoodThen) {
  const auto whole = made(shuffled(testing::made_plan(2, 5)), testing::assumed());

  const auto early = first_blocks(whole, 3);

  EXPECT_EQ(early.runs.size(), 6U);
  EXPECT_TRUE(std::equal(early.runs.begin(), early.runs.end(), whole.runs.begin()));
  EXPECT_EQ(first_blocks(whole, 5).runs, whole.runs);
}

TEST(ArmsOfCutting, AreThoseInIt) {
  auto plan = testing::made_plan(3);
  plan.cuttings.push_back({.medium = {.name = "manila"}});
  plan.arms[1].cutting = 1;

  EXPECT_EQ(arms_of_cutting(plan, 0).size(), 2U);
  ASSERT_EQ(arms_of_cutting(plan, 1).size(), 1U);
  EXPECT_EQ(arms_of_cutting(plan, 1)[0].medium.name, "manila");
  EXPECT_TRUE(arms_of_cutting(plan, 2).empty());
}

}  // namespace
}  // namespace keenfall::planning
