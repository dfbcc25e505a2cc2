#include "wire/planning_json.h"

#include "wire/schema_faults_test.h"

#include <gtest/gtest.h>

#include <array>

namespace keenfall::wire {
namespace {

using nlohmann::json;

TEST(PlanningJson, OfAPlanHasItsShape) {
  trials::Plan plan{
      .cuttings = {{.medium = {.name = "sisal"}, .checkpoint_cuts = {0, 1, 3}}},
      .arms = {{.blade = "A", .edge = {.bevel_angle = trials::PerSideAngle{17}}}, {.blade = "A"}},
      .start_gate = trials::StartGate{.target_reading = 104},
      .looks = {3, 6},
      .house_blade = "A"};
  plan.runs = {{.arm = 1, .specimen = "2", .block = 1, .order = 1}};

  const json document = json::parse(plan_to_json(plan));

  EXPECT_EQ(testing::faults_against_api(document, "Plan"), "");
  EXPECT_EQ(document["arms"][0]["words"], "A (17° per side)");
  EXPECT_EQ(document["runs"][0]["specimen"], "2");
}

TEST(PlanningJson, OfAnEmptyPlanHasItsShapeToo) {
  EXPECT_EQ(testing::faults_against_api(json::parse(plan_to_json({})), "Plan"), "");
}

TEST(PlanningJson, OfArmsHasItsShape) {
  const json document = json::parse(planned_arms_to_json({{.blade = "A"}, {.blade = "B"}}));

  EXPECT_EQ(testing::faults_against_api(document, "PlannedArms"), "");
  EXPECT_EQ(document["arms"][1]["words"], "B");
}

TEST(PlanningJson, OfCheckpointsHasItsShape) {
  const json document = json::parse(checkpoints_to_json({.cuts = {0, 1, 3}, .why = "So."}));

  EXPECT_EQ(testing::faults_against_api(document, "Checkpoints"), "");
  EXPECT_EQ(document["checkpoint_cuts"], (json{0, 1, 3}));
}

// Each of the eight verdicts with a chance of its own.
ChancesTold told_with(int trials) {
  planning::ChancesAt at{.true_ratio = 2, .wrong = {.probability = 0.3}, .runs_each = 4};
  const std::array chances{0.05, 0.1, 0.15, 0.2, 0.02, 0.03, 0.05, 0.4};
  for (std::size_t v = 0; v < chances.size(); ++v) at.verdicts[v].probability = chances[v];
  return {.cuttings = {{.words = "sisal",
                        .first_arm = "A",
                        .last_arm = "B",
                        .chances = {.at = {at}, .trials = trials},
                        .sentence = "So.",
                        .runs_needed = {.runs_each = 5},
                        .runs_needed_words = "Five."}},
          .trials = trials,
          .assumptions = {.cuttings = {{}}},
          .sentence = "So.",
          .rests_on = {"This."}};
}

TEST(PlanningJson, OfChancesKeepsEveryVerdict) {
  const json document = json::parse(chances_to_json(told_with(0)));

  EXPECT_EQ(testing::faults_against_api(document, "Chances"), "");
  const json& chance = document["cuttings"][0]["chances"][0];
  EXPECT_EQ(chance["worth_having"], 0.05);
  EXPECT_EQ(chance["longer"], 0.1);
  EXPECT_EQ(chance["too_little"], 0.15);
  EXPECT_EQ(chance["same"], 0.2);
  EXPECT_EQ(chance["other_too_little"], 0.02);
  EXPECT_EQ(chance["other_longer"], 0.03);
  EXPECT_EQ(chance["other_worth_having"], 0.05);
  EXPECT_NEAR(chance["other"].get<double>(), 0.1, 1e-12);
  EXPECT_EQ(chance["not_settled"], 0.4);
  EXPECT_EQ(chance["words"], "if one lasts twice as long");
  EXPECT_EQ(document["cuttings"][0]["runs_needed"], 5);
}

// Agresti & Coull 1998 of 40 of 100: p = 42/104, the square root of p (1 - p)/104.
TEST(PlanningJson, OfChancesSaysTheErrorOfTheLikeliestWhereTrialsWereImagined) {
  const json document = json::parse(chances_to_json(told_with(100)));

  EXPECT_NEAR(document["cuttings"][0]["chances"][0]["error"].get<double>(), 0.04811, 1e-5);
  EXPECT_FALSE(
      json::parse(chances_to_json(told_with(0)))["cuttings"][0]["chances"][0].contains("error"));
}

TEST(PlanningJson, OfACostHasItsShapeAndItsWords) {
  planning::PlanCost cost{.runs = 12, .blocks = 6, .cuts = {800, 1524}, .evenings = {1, 2}};

  const json document = json::parse(cost_to_json({.cost = cost, .counted = {}}));

  EXPECT_EQ(testing::faults_against_api(document, "Cost"), "");
  EXPECT_FALSE(document.contains("stock_m"));
  EXPECT_EQ(document["cuts"]["words"], "800 cuts (at most 1520)");
  EXPECT_EQ(document["evenings"]["words"], "1 evening (at most 2)");
}

}  // namespace
}  // namespace keenfall::wire
