#include "wire/reference_json.h"

#include "wire/schema_faults_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <limits>
#include <stdexcept>
#include <string>

namespace keenfall::wire {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;

json phases_about(const std::vector<AskedBody>& asked) {
  return json::parse(phases_to_json({.program_version = "0.1.0", .asked = asked}));
}

std::string faults_of_phases(const json& document) {
  return testing::faults_against_schema(document, "phases.schema.json");
}

json named(const json& list, const std::string& name) {
  for (const json& each : list) {
    if (each["name"] == name) return each;
  }
  return {};
}

TEST(PhasesJson, HasTheDocumentedShape) {
  EXPECT_EQ(faults_of_phases(phases_about({})), "");
  EXPECT_EQ(faults_of_phases(phases_about({{"matrix", {640, 720}}, {"MC", {2400, 3000}}})), "");
}

TEST(PhasesJson, IsHeldAgainstASchemaThatRefuses) {
  json scored = phases_about({});
  scored["phases"][0]["score"] = 9;
  json without_source = phases_about({});
  without_source["phases"][0].erase("source");

  EXPECT_THAT(faults_of_phases(scored), HasSubstr("refused"));
  EXPECT_THAT(faults_of_phases(without_source), HasSubstr("refused"));
}

// Foundry lexicon, scale of hardness: quartz 900 to 1280.
TEST(PhasesJson, HoldsEveryPhaseWithASourceThatIsListed) {
  const json document = phases_about({});

  ASSERT_EQ(document["phases"].size(), materials::known_phases().size());
  const json quartz = named(document["phases"], "quartz");
  EXPECT_EQ(quartz["lo_hv"], 900);
  EXPECT_EQ(quartz["hi_hv"], 1280);
  EXPECT_EQ(quartz["mark"], "seen");
  std::string keys;
  for (const json& source : document["sources"]) keys += source["key"].get<std::string>() + " ";
  for (const json& phase : document["phases"]) {
    EXPECT_THAT(keys, HasSubstr(phase["source"].get<std::string>()));
  }
}

// The 1.2 rule by hand: 1000 HV scratches up to 833 HV, and is scratched from 1200 HV on.
TEST(PhasesJson, SaysWhatScratchesWhatWasAskedAbout) {
  const json asked = phases_about({{"a body", {1000, 1000}}})["asked"][0];

  EXPECT_EQ(named(asked["scratches"], "feldspar")["surely"], true);
  EXPECT_TRUE(named(asked["scratches"], "quartz").is_null());
  EXPECT_EQ(named(asked["scratched_by"], "quartz")["surely"], false);
  EXPECT_EQ(named(asked["scratched_by"], "corundum")["surely"], true);
}

TEST(PhasesJson, RefusesNumbersThatJsonHasNoWordFor) {
  const double infinite = std::numeric_limits<double>::infinity();
  EXPECT_THROW((void)phases_about({{"a body", {1000, infinite}}}), std::logic_error);
}

// ASTM E140: 60 HRC is 697 HV.
TEST(HardnessJson, HasTheDocumentedShapeWithAndWithoutAQuestion) {
  const json table = json::parse(hardness_to_json({.program_version = "0.1.0"}));
  const json asked = json::parse(
      hardness_to_json({.program_version = "0.1.0", .asked = materials::HardnessRow{60, 697}}));

  EXPECT_EQ(testing::faults_against_schema(table, "hardness.schema.json"), "");
  EXPECT_EQ(testing::faults_against_schema(asked, "hardness.schema.json"), "");
  EXPECT_EQ(asked["asked"], json({{"hrc", 60}, {"hv", 697}}));
  EXPECT_FALSE(table.contains("asked"));
  EXPECT_EQ(table["rows"].front(), json({{"hrc", 40}, {"hv", 392}}));
  EXPECT_EQ(table["mark"], "seen");
}

}  // namespace
}  // namespace keenfall::wire
