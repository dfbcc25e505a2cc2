#include "wire/planning_requests.h"

#include "wire/planning_json.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <functional>
#include <string>

namespace keenfall::wire {
namespace {

using nlohmann::json;

// With something in every field.
trials::Plan full_plan() {
  return {.counted = {.one = "stroke", .many = "strokes"},
          .cuttings = {{.medium = {.name = "sisal", .condition = "dry"},
                        .lot = "roll 3",
                        .method = {.motion = trials::Motion::draw,
                                   .as_written = "slowly",
                                   .cut_length_mm = 100,
                                   .edge_used_mm = 40,
                                   .board = "beech"},
                        .checkpoint_cuts = {0, 1, 3.5, 7}},
                       {.medium = {.name = "rope"}, .checkpoint_cuts = {0, 2, 9}}},
          .arms = {{.blade = "A",
                    .edge = {.bevel_angle = trials::PerSideAngle{17},
                             .apex_angle = trials::PerSideAngle{20},
                             .finish = "9 µm diamond",
                             .thickness_behind_edge_mm = 0.4}},
                   {.blade = "B", .cutting = 1}},
          .reading = {.kind = "cord_draw",
                      .unit = "N",
                      .thread = "sisal cord",
                      .thread_lot = "2",
                      .repeats = 5,
                      .stations = {"heel", "tip"}},
          .start_gate = trials::StartGate{.target_reading = 104, .tolerance_fraction = 0.1},
          .stop = {.level = 4, .force_cap_newton = 60},
          .runs_each = 3,
          .looks = {2, 3},
          .house_blade = "A",
          .order_seed = {7},
          .runs = {{.arm = 1, .specimen = "1", .block = 1, .order = 1}, {.arm = 0, .order = 2}}};
}

// A plan in which `change` was made; a problem it must then have.
base::Problem problem_where(const std::function<void(json&)>& change) {
  json plan = json::parse(plan_to_json(full_plan()));
  change(plan);
  const auto read = plan_asked_from(json{{"plan", plan}}.dump());
  EXPECT_FALSE(read) << plan;
  return read ? base::Problem{} : read.error().front();
}

TEST(PlanRequest, IsReadBackAsItIsWritten) {
  const auto read = plan_from_request(plan_to_json(full_plan()));

  ASSERT_TRUE(read) << in_words(read.error().front());
  EXPECT_EQ(*read, full_plan());
}

TEST(PlanRequest, NamesTheFieldThatCannotBeUsed) {
  EXPECT_EQ(problem_where([](json& plan) {
              plan["arms"][1]["edge"]["bevel_angle_per_side_deg"] = 90;
            }).sentence,
            "“plan.arms[1].edge.bevel_angle_per_side_deg” cannot be used.");
  EXPECT_EQ(
      problem_where([](json& plan) { plan["cuttings"][0]["method"]["motion"] = "saw"; }).accepted,
      "push, draw, slice");
  EXPECT_EQ(problem_where([](json& plan) { plan["counted"] = "moons"; }).place.column,
            "plan.counted");
  EXPECT_EQ(problem_where([](json& plan) { plan["runs_each"] = -1; }).place.column,
            "plan.runs_each");
  EXPECT_EQ(problem_where([](json& plan) { plan["looks"] = {2, 2.5}; }).place.column, "plan.looks");
  EXPECT_EQ(problem_where([](json& plan) { plan["order_seed"] = 1e300; }).place.column,
            "plan.order_seed");
  EXPECT_EQ(problem_where([](json& plan) {
              plan["cuttings"][1]["checkpoint_cuts"] = {0, "1"};
            }).place.column,
            "plan.cuttings[1].checkpoint_cuts");
  EXPECT_EQ(problem_where([](json& plan) { plan["margin"] = 2; }).sentence,
            "Nothing here is called “plan.margin”.");
}

TEST(PlanRequest, AsksForWhatAPlanCannotBeWithout) {
  for (const char* field :
       {"cuttings", "arms", "reading", "stop", "runs_each", "order_seed", "runs"}) {
    const base::Problem problem = problem_where([&](json& plan) { plan.erase(field); });

    EXPECT_EQ(problem.kind, base::ProblemKind::missing) << field;
    EXPECT_EQ(problem.place.column, std::string("plan.") + field);
  }
}

TEST(PlanRequest, HoldsWhatIsAssumedOfEachCutting) {
  json body{{"plan", json::parse(plan_to_json(full_plan()))},
            {"claims", {{{"words", "A outlasts B"}, {"worth_it_margin", 2}}}},
            {"assumptions",
             {{"half_keenness_cuts", {30, nullptr}}, {"shape", 0.7}, {"reading_log_sd", 0.1}}},
            {"rough", true}};

  const auto read = plan_asked_from(body.dump());

  ASSERT_TRUE(read) << in_words(read.error().front());
  EXPECT_EQ(read->claims.front(), (trials::Claim{"A outlasts B", 2}));
  ASSERT_EQ(read->assumptions.half_keenness_cuts.size(), 2U);
  EXPECT_EQ(read->assumptions.half_keenness_cuts[0], 30);
  EXPECT_FALSE(read->assumptions.half_keenness_cuts[1]);
  EXPECT_EQ(read->assumptions.shape, 0.7);
  EXPECT_EQ(read->assumptions.reading_log_sd, 0.1);
  EXPECT_TRUE(read->is_rough);
}

TEST(PlanRequest, RefusesAssumptionsThatAreNoNumbers) {
  const json body{{"plan", json::parse(plan_to_json(full_plan()))},
                  {"assumptions", {{"run_log_sd", {"a lot"}}}}};

  const auto read = plan_asked_from(body.dump());

  ASSERT_FALSE(read);
  EXPECT_EQ(read.error().front().accepted,
            "a list; each of it a number, 0 or more, or null for the usual");
}

TEST(ArmsRequest, IsReadWithItsEdges) {
  const auto read = arms_asked_from(
      R"({"blades": ["A", "B"], "edges": [{"finish": "9 µm diamond"}, {}], "cuttings": 2,
          "crossed": false})");

  ASSERT_TRUE(read) << in_words(read.error().front());
  EXPECT_EQ(read->choices.blades, (std::vector<std::string>{"A", "B"}));
  EXPECT_EQ(read->choices.edges[0].finish, "9 µm diamond");
  EXPECT_EQ(read->choices.cuttings, 2U);
  EXPECT_FALSE(read->crossed);
}

TEST(ArmsRequest, NeedsANumberOfCuttings) {
  const auto read = arms_asked_from(R"({"blades": [], "edges": [], "cuttings": 0})");

  ASSERT_FALSE(read);
  EXPECT_EQ(read.error().front().place.column, "cuttings");
}

TEST(CheckpointsRequest, MayBeEmpty) {
  EXPECT_TRUE(checkpoints_asked_from("{}"));
  EXPECT_FALSE(checkpoints_asked_from(R"({"gritty": "yes"})"));
}

TEST(OwnScatterRequest, NeedsABladeAndAMedium) {
  const auto read = own_scatter_asked_from(R"({"blade": " "})");

  ASSERT_FALSE(read);
  ASSERT_EQ(read.error().size(), 2U);
  EXPECT_EQ(read.error()[0].sentence, "“blade” is needed.");
  EXPECT_EQ(read.error()[1].sentence, "“medium” is needed.");
}

}  // namespace
}  // namespace keenfall::wire
