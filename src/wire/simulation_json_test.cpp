#include "wire/simulation_json.h"

#include "wire/schema_faults_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <set>
#include <stdexcept>
#include <string>

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

const json& constant_in(const json& constants, const std::string& field) {
  for (const json& constant : constants) {
    if (constant["field"] == field) return constant;
  }
  throw std::out_of_range(field);
}

// Quantities of the tables in docs/methods/apex.md.
TEST(SimulationJson, HoldsWhatItTakesToRepeatAndToDoubtIt) {
  const json document = simulation();

  EXPECT_EQ(document["edge_length_mm"], 2);
  EXPECT_EQ(document["repeats"], 7);
  EXPECT_EQ(document["edges"][0], (json{{"finish", "fine"}, {"apex_angle_per_side_deg", 15}}));
  EXPECT_EQ(document["works"][0]["steps"][0]["medium"], "uplifted sisal matting");
  const json& used = document["constants_used"];
  EXPECT_EQ(used["steels"].size(), 2U);
  EXPECT_EQ(constant_in(used["finishes"][0]["constants"], "tooth_spacing_um")["usual"], 8);
  const json& hits = constant_in(used["media"][0]["constants"], "hits_per_mm_cut");
  EXPECT_EQ(hits["usual"], 0.4);
  EXPECT_EQ(hits["unit"], "1/mm");
  EXPECT_NEAR(hits["hi"].get<double>(), 1.2, 1e-12);
  EXPECT_EQ(hits["mark"], "tuned");
  EXPECT_EQ(constant_in(used["model"], "flaw_constant")["usual"], 0.1);
}

TEST(SimulationJson, NamesEachSourceThatAConstantNames) {
  const json document = simulation();
  std::set<std::string> keys;
  for (const json& source : document["sources"]) keys.insert(source["key"].get<std::string>());

  for (const json& medium : document["constants_used"]["media"]) {
    for (const json& constant : medium["constants"]) {
      EXPECT_EQ(keys.count(constant["source"].get<std::string>()), 1U) << constant;
    }
  }
}

TEST(ApexJson, HoldsWhatItTakesToRepeatAndToDoubtIt) {
  const json document = apex();

  EXPECT_EQ(document["cuts"], 15);
  EXPECT_EQ(document["work"]["steps"][0]["cuts"], 1);
  const json& used = document["constants_used"];
  EXPECT_EQ(constant_in(used["media"][0]["constants"], "abrasive_hv")["usual"], 1100);
  EXPECT_EQ(constant_in(used["model"], "friction")["mark"], "guess");
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
