#include "planning/runs_to_cut.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::planning {
namespace {

using ::testing::ElementsAre;

// A in rope and B in felt, a run each in two blocks.
trials::Plan two_arms() {
  return {.cuttings = {{.medium = {.name = "rope"}, .checkpoint_cuts = {0, 1}},
                       {.medium = {.name = "felt"}, .checkpoint_cuts = {0, 1}}},
          .arms = {{.blade = "A", .edge = {.bevel_angle = {{17}}}, .cutting = 0},
                   {.blade = "B", .edge = {.bevel_angle = {{17}}}, .cutting = 1}},
          .runs = {{.arm = 0, .block = 1, .order = 1},
                   {.arm = 1, .block = 1, .order = 2},
                   {.arm = 1, .block = 2, .order = 3}}};
}

trials::Run run_of(const trials::Plan& plan, std::size_t arm, const std::string& name) {
  const trials::PlannedArm& planned = plan.arms.at(arm);
  const trials::PlannedCutting& cutting = plan.cuttings.at(planned.cutting);
  return {.name = name,
          .arm = {.blade = planned.blade,
                  .edge = planned.edge,
                  .medium = cutting.medium,
                  .method = cutting.method},
          .readings = {{.cuts = 0, .reading = 100}}};
}

std::vector<std::size_t> places_left(const trials::Plan& plan, const trials::Run& run) {
  std::vector<std::size_t> places;
  for (const RunToCut& left : runs_to_cut(plan, {.runs = {run}})) places.push_back(left.planned);
  return places;
}

TEST(RunsToCut, AreAllOfAPlanThatIsNotBegun) {
  EXPECT_THAT(runs_to_cut(two_arms(), {}),
              ElementsAre(RunToCut{.planned = 0, .name = "1"},
                          RunToCut{.planned = 1, .name = "1"},
                          RunToCut{.planned = 2, .name = "2"}));
}

TEST(RunsToCut, AreKnownByTheirPlaceInTheOrder) {
  const trials::Plan plan = two_arms();
  trials::Run run = run_of(plan, 1, "whatever");
  run.order = 3;
  run.arm.edge = {.bevel_angle = {{20}}};  // otherwise than planned

  EXPECT_THAT(places_left(plan, run), ElementsAre(0U, 1U));
  run.arm.blade = "A";
  EXPECT_THAT(places_left(plan, run), ElementsAre(0U, 1U, 2U)) << "another blade's is none of them";
}

TEST(RunsToCut, AreKnownByTheirNameWhereNoPlaceWasRecorded) {
  trials::Plan plan = two_arms();
  trials::Run run = run_of(plan, 1, "1");
  EXPECT_THAT(places_left(plan, run), ElementsAre(0U, 2U));

  run.arm.edge = {};
  EXPECT_THAT(places_left(plan, run), ElementsAre(0U, 2U));
  plan.arms.push_back({.blade = "B", .edge = {.bevel_angle = {{20}}}, .cutting = 1});
  EXPECT_THAT(places_left(plan, run), ElementsAre(0U, 1U, 2U)) << "it may be of the other edge";
  run.name = "first";
  EXPECT_THAT(places_left(two_arms(), run), ElementsAre(0U, 1U, 2U));
}

TEST(RunsToCut, AreCutAgainUnderAnotherNameWhereTheyDoNotCount) {
  const trials::Plan plan = two_arms();
  trials::Run run = run_of(plan, 0, "1");
  run.order = 1;
  run.voided_reason = "the rope slipped";

  EXPECT_EQ(runs_to_cut(plan, {.runs = {run}}).front(),
            (RunToCut{.planned = 0, .name = "1 again 2"}));
}

TEST(RunsToCut, AreNotInWhereNothingWasRead) {
  const trials::Plan plan = two_arms();
  trials::Run run = run_of(plan, 0, "1");
  run.order = 1;
  run.readings.clear();

  EXPECT_THAT(places_left(plan, run), ElementsAre(0U, 1U, 2U));
}

}  // namespace
}  // namespace keenfall::planning
