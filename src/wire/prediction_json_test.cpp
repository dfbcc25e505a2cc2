#include "wire/prediction_json.h"

#include "wear/uncertain_constants.h"
#include "wire/schema_faults_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace keenfall::wire {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;

PredictionDocument made_document() {
  const auto d2 = materials::find_microstructure("AISI D2").value();
  const auto c75s = materials::find_microstructure("C75S").value();
  PredictionDocument document{
      .program_version = "0.1.0",
      .asked = {
          .a = {d2, {17}}, .b = {c75s, {17}}, .work = wear::work_in(wear::known_media().front())}};
  document.predicted.ratio = {
      .usual_answer = 3.2,
      .joint = numerics::Interval{.median = 3, .lo90 = 1.5, .hi90 = 6, .lo95 = 1.2, .hi95 = 7},
      .draws = 60};
  const auto constants = wear::uncertain_constants({.steels = {d2}, .work = document.asked.work});
  document.predicted.ratio.effects = {{.constant = constants.front().constant,
                                       .answer_at_lo = 2,
                                       .answer_at_hi = 4,
                                       .rank_correlation = -0.5}};
  document.predicted.life_a_cuts = 96;
  document.predicted.life_b_cuts = 30;
  document.predicted.share_longer = 0.95;
  document.predicted.card = materials::CardDepthsCompared{{385, 447}, {280, 300}, {1.28, 1.6}};
  return document;
}

std::string faults(const json& document) {
  return testing::faults_against_schema(document, "prediction.schema.json");
}

TEST(PredictionJson, HasTheDocumentedShape) {
  const json whole = json::parse(prediction_to_json(made_document()));
  EXPECT_EQ(faults(whole), "");
  EXPECT_EQ(whole["ratio"], 3.2);
  EXPECT_EQ(whole["asked"]["a"]["steel"], "AISI D2");
  EXPECT_EQ(whole["constants"][0]["ratio_at_lo"], 2);
  EXPECT_EQ(whole["constants"][0]["field"], "abrasive_hv");
  EXPECT_EQ(whole["constants_used"]["media"][0]["constants"].size(), 15U);
  EXPECT_EQ(whole["constants_used"]["steels"].size(), 2U);
  EXPECT_EQ(whole["card_depth"]["a"]["lo_mm"], 385);

  PredictionDocument bare = made_document();
  bare.predicted = {.no_card_because = "The card regression was fitted to other angles."};
  const json without = json::parse(prediction_to_json(bare));
  EXPECT_EQ(faults(without), "");
  EXPECT_FALSE(without.contains("ratio"));
}

TEST(PredictionJson, IsHeldAgainstASchemaThatRefuses) {
  json scored = json::parse(prediction_to_json(made_document()));
  scored["score"] = 9;

  EXPECT_THAT(faults(scored), HasSubstr("refused"));
}

}  // namespace
}  // namespace keenfall::wire
