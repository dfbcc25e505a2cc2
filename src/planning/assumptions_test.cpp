#include "planning/assumptions.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::planning {
namespace {

trials::Plan plan_of_three_in_one_and_two_in_another() {
  trials::Plan plan{.cuttings = {{.checkpoint_cuts = {0, 1, 3, 7, 15, 31, 63, 127, 255}},
                                 {.checkpoint_cuts = {0, 1, 2, 4, 6, 9, 13, 19, 28}}}};
  for (const char* blade : {"A", "B", "C"}) plan.arms.push_back({.blade = blade, .cutting = 0});
  for (const char* blade : {"A", "B"}) plan.arms.push_back({.blade = blade, .cutting = 1});
  return plan;
}

// Common practice, no source.
TEST(UsualScatter, GrowsWithLessCare) {
  EXPECT_EQ(usual_run_scatter(Care::guided_one_lot).least, 0.12);
  EXPECT_EQ(usual_run_scatter(Care::guided_one_lot).most, 0.20);
  EXPECT_EQ(usual_run_scatter(Care::careful_freehand).usual, 0.25);
  EXPECT_EQ(usual_run_scatter(Care::gritty_stock).usual, 0.35);
  EXPECT_EQ(usual_run_scatter(Care::mixed_days).most, 0.50);
  EXPECT_EQ(in_words(Care::careful_freehand), "careful freehand");
}

TEST(UsualScatter, HasWordsForEveryKindOfCare) {
  EXPECT_EQ(in_words(Care::guided_one_lot), "guided angle, one hand, one lot");
  EXPECT_EQ(in_words(Care::gritty_stock), "gritty stock");
  EXPECT_EQ(in_words(Care::mixed_days), "mixed days or lots, without blocks");
}

// An invented bench whose half keenness is 34 to 108 cuts in clean stock and 8 to 9 in gritty.
TEST(HalfKeennessLookedFor, HasTwoCheckpointsBeyond) {
  const auto plan = plan_of_three_in_one_and_two_in_another();

  EXPECT_NEAR(half_keenness_looked_for(plan.cuttings[0].checkpoint_cuts), 44.2, 0.05);
  EXPECT_NEAR(half_keenness_looked_for(plan.cuttings[1].checkpoint_cuts), 10.8, 0.05);
}

TEST(HalfKeennessLookedFor, LiesBetweenTheFirstTwoOfFour) {
  EXPECT_NEAR(half_keenness_looked_for(std::vector<double>{0, 4, 9, 20, 50}), 6, 1e-12);
}

TEST(HalfKeennessLookedFor, IsSomethingWhereThereAreHardlyCheckpoints) {
  EXPECT_EQ(half_keenness_looked_for({}), 40);
  EXPECT_EQ(half_keenness_looked_for(std::vector<double>{0}), 40);
  EXPECT_EQ(half_keenness_looked_for(std::vector<double>{0, 25}), 25);
  EXPECT_EQ(half_keenness_looked_for(std::vector<double>{0, 10, 20, 40}), 20);
}

TEST(HalfKeennessLookedFor, HeedsNoCheckpointThatIsNeverReached) {
  EXPECT_EQ(half_keenness_looked_for(std::vector<double>{0, 10, 20, 40, INFINITY}), 20);
}

TEST(UsualAssumptions, TakeTheGateForTheStart) {
  auto plan = plan_of_three_in_one_and_two_in_another();
  plan.start_gate = trials::StartGate{.target_reading = 87};

  const Assumptions usual = usual_assumptions(plan);

  EXPECT_EQ(usual.start_reading, 87);
  EXPECT_EQ(usual.cuttings.size(), 2U);
  EXPECT_TRUE(problems_of(usual, plan).empty());
}

TEST(UsualAssumptions, TakeNoStartFromAGateWithoutATarget) {
  auto plan = plan_of_three_in_one_and_two_in_another();
  plan.start_gate = trials::StartGate{.target_reading = 0};

  EXPECT_EQ(usual_assumptions(plan).start_reading, Assumptions{}.start_reading);
}

TEST(Assumptions, AreRefusedWhereOutOfRange) {
  const auto plan = plan_of_three_in_one_and_two_in_another();
  Assumptions assumed = usual_assumptions(plan);
  assumed.cuttings[1].run_log_sd = 5;

  const auto problems = problems_of(assumed, plan);

  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].sentence,
            "The scatter from run to run is assumed to be 5, which is out of its range.");
  EXPECT_EQ(problems[0].place.column, "run_log_sd");
  EXPECT_EQ(problems[0].accepted, "0.01 to 2");
}

TEST(Assumptions, AreRefusedWhereNotANumber) {
  const auto plan = plan_of_three_in_one_and_two_in_another();
  Assumptions assumed = usual_assumptions(plan);
  assumed.true_ratio = NAN;

  EXPECT_EQ(problems_of(assumed, plan).size(), 1U);
}

TEST(Assumptions, AreRefusedForAnotherNumberOfCuttings) {
  const auto plan = plan_of_three_in_one_and_two_in_another();

  const auto problems = problems_of({.cuttings = {{}}}, plan);

  ASSERT_EQ(problems.size(), 1U);
  EXPECT_EQ(problems[0].sentence, "Something is assumed of 1 cuttings, and the plan has 2.");
}

TEST(ExpectedCurve, LastsByTheTrueRatioFromTheFirstArmToTheLast) {
  const auto plan = plan_of_three_in_one_and_two_in_another();
  const Assumptions assumed{.cuttings = {{.half_keenness_cuts = 60}, {.half_keenness_cuts = 9}},
                            .true_ratio = 4};

  EXPECT_NEAR(std::exp(expected_curve(plan, assumed, 0).log_half_keenness), 120, 1e-9);
  EXPECT_NEAR(std::exp(expected_curve(plan, assumed, 1).log_half_keenness), 60, 1e-9);
  EXPECT_NEAR(std::exp(expected_curve(plan, assumed, 2).log_half_keenness), 30, 1e-9);
  EXPECT_NEAR(std::exp(expected_curve(plan, assumed, 3).log_half_keenness), 18, 1e-9);
  EXPECT_NEAR(std::exp(expected_curve(plan, assumed, 0).log_start), 104, 1e-9);
}

TEST(ExpectedCurve, OfASingleArmIsInTheMiddle) {
  const trials::Plan plan{.cuttings = {{}}, .arms = {{.blade = "A"}}};

  EXPECT_NEAR(expected_curve(plan, {.cuttings = {{.half_keenness_cuts = 60}}}, 0).log_half_keenness,
              std::log(60),
              1e-12);
}

TEST(ExpectedCurve, NeedsAnArmOfThePlan) {
  EXPECT_THROW((void)expected_curve({}, {}, 0), std::logic_error);
}

TEST(ExpectedCurve, NeedsSomethingAssumedOfItsCutting) {
  const auto plan = plan_of_three_in_one_and_two_in_another();

  EXPECT_NO_THROW((void)expected_curve(plan, {.cuttings = {{}}}, 2));
  EXPECT_THROW((void)expected_curve(plan, {.cuttings = {{}}}, 3), std::logic_error);
}

}  // namespace
}  // namespace keenfall::planning
