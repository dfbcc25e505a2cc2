#include "wire/resharpening_json.h"

#include "wire/schema_faults_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace keenfall::wire {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;

std::string faults_of_resharpening(const json& document) {
  return testing::faults_against_schema(document, "resharpening.schema.json");
}

ResharpeningDocument a_resharpening() {
  ResharpeningDocument document{
      .program_version = "0.1.0",
      .question = {.edge = {.bevel = {.bevel_angle = {15}, .thickness_behind_edge_mm = 0.3},
                            .damage = {.deepest_chip_um = 10}},
                   .steel = materials::find_microstructure("AISI A11").value(),
                   .draws = 50}};
  const std::vector<sharpening::Stone> stones(sharpening::known_stones().begin(),
                                              sharpening::known_stones().end());
  document.ways.push_back({.found = resharpening(document.question, stones).value()});
  auto micro = document.question;
  micro.edge.micro_bevel_angle = trials::PerSideAngle{20};
  document.ways.push_back({.micro_bevel_angle = micro.edge.micro_bevel_angle,
                           .found = resharpening(micro, stones).value()});
  return document;
}

json document_of_resharpening(const ResharpeningDocument& document) {
  return json::parse(resharpening_to_json(document));
}

TEST(ResharpeningJson, HasTheDocumentedShape) {
  ResharpeningDocument document = a_resharpening();
  EXPECT_EQ(faults_of_resharpening(document_of_resharpening(document)), "");

  document.question.work.dress_every_passes = 30;
  document.growth = sharpening::DamageGrowth{.seen_after_cuts = 100, .setup_minutes = 3};
  document.ways[0].best_moment = sharpening::MomentOverDraws{
      .typical = {.cuts = 70, .minutes_per_1000_cuts = 12}, .draws = 50};
  const json full = document_of_resharpening(document);
  EXPECT_EQ(faults_of_resharpening(full), "");
  EXPECT_EQ(full["ways"][0]["best_moment"]["where"], "inside");
}

TEST(ResharpeningJson, IsHeldAgainstASchemaThatRefuses) {
  const json good = document_of_resharpening(a_resharpening());
  const auto faults_with = [&good](const char* place, const json& value) {
    json changed = good;
    changed[json::json_pointer(place)] = value;
    return faults_of_resharpening(changed);
  };

  EXPECT_THAT(faults_with("/score", 9), HasSubstr("refused"));
  EXPECT_THAT(faults_with("/ways/0/way", "by_magic"), HasSubstr("refused"));
  EXPECT_THAT(faults_with("/ways/0/stones/0/passes", 9), HasSubstr("refused"));
  EXPECT_THAT(faults_with("/ways/0/hangs_on/0/mark", "sure"), HasSubstr("refused"));
  EXPECT_THAT(faults_with("/edge/land_um", -1), HasSubstr("refused"));
}

// tests/reference/resharpening.py: 630.806 passes on fused alumina, 44.684 on diamond.
TEST(ResharpeningJson, HoldsTheNumbersOfTheEngine) {
  const json reset = document_of_resharpening(a_resharpening())["ways"][0];

  EXPECT_EQ(reset["way"], "reset_bevel");
  EXPECT_EQ(reset["stones"][0]["stone"], "fused alumina");
  EXPECT_NEAR(reset["stones"][0]["passes"]["typical"].get<double>(), 630.806, 2e-3);
  EXPECT_NEAR(reset["stones"][3]["passes"]["typical"].get<double>(), 44.684, 2e-3);
  EXPECT_LT(reset["stones"][0]["passes"]["lo90"], reset["stones"][0]["passes"]["hi90"]);
}

TEST(ResharpeningJson, ListsTheSourceOfEveryConstant) {
  const json document = document_of_resharpening(a_resharpening());
  std::string keys;
  for (const json& source : document["sources"]) keys += source["key"].get<std::string>() + " ";

  for (const json& each : document["ways"][0]["hangs_on"]) {
    EXPECT_THAT(keys, HasSubstr(each["source"].get<std::string>()));
  }
}

}  // namespace
}  // namespace keenfall::wire
