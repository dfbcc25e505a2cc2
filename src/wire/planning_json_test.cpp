#include "wire/planning_json.h"

#include "wire/schema_faults_test.h"

#include <gtest/gtest.h>

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

}  // namespace
}  // namespace keenfall::wire
