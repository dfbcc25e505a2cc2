#include "wire/simulation_json.h"

#include "wire/schema_faults_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace keenfall::wire {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;

materials::Microstructure steel(const char* name) {
  return materials::find_microstructure(name).value();
}

wear::TrialPlan small_plan() {
  return {.steels = {steel("AISI A11"), steel("75Ni8")},
          .works = {wear::work_in(wear::known_media()[1])},
          .edges = {{.finish_name = "fine", .finish = wear::fine_finish()}},
          .runs_each = 2,
          .blocks = 2,
          .longest_cuts = 15,
          .edge_length_mm = 2,
          .seed = {5},
          .truth_edges = 10};
}

json simulation() {
  const wear::TrialPlan plan = small_plan();
  const auto made = wear::simulated_trial(plan, base::one_thread()).value();
  return json::parse(simulation_to_json({"0.1.0", plan, made}));
}

json apex() {
  const wear::EdgeQuestion question{.steel = steel("AISI A11"),
                                    .work = wear::work_in(wear::known_media()[1]),
                                    .edge = {.finish_name = "fine", .finish = wear::fine_finish()},
                                    .cuts = 15,
                                    .edge_length_mm = 1,
                                    .other_edges = 4};
  const auto story = wear::edge_story(question, base::one_thread()).value();
  return json::parse(apex_to_json({"0.1.0", question, story, CurveInNumbers{}}));
}

TEST(SimulationJson, HasTheDocumentedShape) {
  EXPECT_EQ(testing::faults_against_schema(simulation(), "simulation.schema.json"), "");
}

TEST(SimulationJson, IsHeldAgainstASchemaThatRefuses) {
  json without_caution = simulation();
  without_caution.erase("caution");
  json shorter_a = simulation();
  shorter_a["truth"]["ratios"][0]["ratio"] = 0.5;

  EXPECT_THAT(testing::faults_against_schema(without_caution, "simulation.schema.json"),
              HasSubstr("refused"));
  EXPECT_THAT(testing::faults_against_schema(shorter_a, "simulation.schema.json"),
              HasSubstr("refused"));
}

TEST(SimulationJson, HoldsTheTrialAndItsTruth) {
  const json document = simulation();

  EXPECT_EQ(document["trial"]["runs"].size(), 4U);
  EXPECT_EQ(document["truth"]["arms"].size(), 2U);
  EXPECT_EQ(document["truth"]["level"], 2);
  EXPECT_EQ(document["caution"], "plausible parameters, not validated");
}

TEST(ApexJson, HasTheDocumentedShape) {
  EXPECT_EQ(testing::faults_against_schema(apex(), "apex.schema.json"), "");
}

// A segment is 4 um: 250 to a millimetre.
TEST(ApexJson, HoldsTheSectionsAndTheReadings) {
  const json document = apex();

  EXPECT_EQ(document["section_at_end"]["height_um"].size(), 250U);
  EXPECT_EQ(document["readings"].size(), 5U);
  EXPECT_EQ(document["readings"][0]["push_ratio"], 1);
}

}  // namespace
}  // namespace keenfall::wire
