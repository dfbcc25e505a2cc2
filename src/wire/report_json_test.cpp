#include "wire/report_json.h"

#include "telling/made_report_test.h"
#include "wire/judgement_json.h"
#include "wire/schema_faults_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <limits>
#include <stdexcept>
#include <string>
#include <utility>

namespace keenfall::wire {
namespace {

using nlohmann::json;
using telling::Report;
using telling::testing::made_report;
using ::testing::HasSubstr;
using ::testing::Not;

json document_of(const Report& report) { return json::parse(report_to_json(report)); }

std::string faults_of_report(const json& document) {
  return testing::faults_against_schema(document, "report.schema.json");
}

TEST(ReportJson, HasTheDocumentedShape) {
  const json document = document_of(made_report());

  EXPECT_EQ(faults_of_report(document), "");
  EXPECT_EQ(document["title"], "The matting bench");
  EXPECT_EQ(document["written_on"], "2026-11-26");
  EXPECT_EQ(document["from"], json({"readings.csv"}));
}

// The schema says no to what it does not document, also within the judgement it refers to.
TEST(ReportJson, IsHeldAgainstASchemaThatRefuses) {
  const json good = document_of(made_report());
  const auto faults_with = [&good](const char* place, const json& value) {
    json changed = good;
    changed[json::json_pointer(place)] = value;
    return faults_of_report(changed);
  };

  EXPECT_THAT(faults_with("/score", 9), HasSubstr("refused"));
  EXPECT_THAT(faults_with("/judgements/0/judgement/score", 9), HasSubstr("refused"));
  EXPECT_THAT(faults_with("/judgements/0/judgement/arms/0/runs", "six"), HasSubstr("refused"));
  EXPECT_THAT(faults_with("/trial/runs/0/readings/0/reading", "sharp"), HasSubstr("refused"));
  EXPECT_THAT(faults_with("/trial/runs/0/arm", 0), HasSubstr("refused"));
  EXPECT_THAT(faults_with("/written_on", "yesterday"), HasSubstr("refused"));
}

TEST(ReportJson, HoldsTheJudgementAsJudgeWritesIt) {
  const Report report = made_report();
  json alone = json::parse(judgement_to_json(
      {.program_version = "0.1.0", .judgements = {report.judgements[0].judgement}}));
  for (const char* key :
       {"format", "format_version", "program_version", "headline", "also_judged"}) {
    alone.erase(key);
  }

  EXPECT_EQ(document_of(report)["judgements"][0]["judgement"], alone);
}

TEST(ReportJson, NamesArmsAndSaysWhatMayBeCompared) {
  const json judged = document_of(made_report())["judgements"][0];

  EXPECT_EQ(judged["names"].size(), 6U);
  EXPECT_EQ(judged["names"][5]["name"], "C");
  EXPECT_EQ(judged["names"][5]["label"], "C");
  EXPECT_EQ(judged["media"][1],
            json({{"words", "uplifted matting"},
                  {"at", {{"what", "half_keenness"}, {"level", 2.0}}},
                  {"lasting_words", "cuts to half keenness"},
                  {"arms", {3, 4, 5}},
                  {"comparisons", {5, 3, 4}}}));
}

TEST(ReportJson, SaysHowLongEachArmLastsAndEachComparisonInRoundedNumbers) {
  const Report report = made_report();
  const json judged = document_of(report)["judgements"][0];

  EXPECT_EQ(judged["names"][5]["lasting"]["median"], 9.2);
  EXPECT_EQ(judged["names"][5]["lasting"]["words"], "9.2 cuts (0.92 m)");
  const auto& comparisons = report.judgements.front().judgement.comparisons;
  ASSERT_EQ(judged["comparisons"].size(), comparisons.size());
  for (std::size_t i = 0; i < comparisons.size(); ++i) {
    EXPECT_EQ(judged["comparisons"][i]["a"], comparisons[i].a);
    EXPECT_EQ(judged["comparisons"][i]["b"], comparisons[i].b);
    EXPECT_EQ(judged["comparisons"][i]["settled"],
              comparisons[i].verdict != verdicts::Verdict::not_settled);
  }
}

// Each medium is compared at a level or a reading of its own (compare.h).
TEST(ReportJson, SaysOfEachMediumWhereItIsCompared) {
  verdicts::Judgement judgement = verdicts::testing::made_judgement();
  for (verdicts::Comparison& pair : judgement.comparisons) {
    pair.at = {.what = verdicts::ComparedAt::common_reading, .reading = pair.a > 2 ? 620.0 : 270.0};
  }
  judgement.media->at = judgement.comparisons.back().at;
  for (std::size_t arm = 0; arm < judgement.arms.size(); ++arm) {
    judgement.arms[arm].common_reading = verdicts::CutsToLevel{
        .cuts = verdicts::testing::around(static_cast<double>(30 + arm), 0.1)};
  }

  const json document = document_of(made_report(std::move(judgement)));

  EXPECT_EQ(faults_of_report(document), "");
  const json& judged = document["judgements"][0];
  EXPECT_EQ(judged["media"][0]["at"]["reading"], 270);
  EXPECT_EQ(judged["media"][0]["lasting_words"], "cuts to reach 270 gf");
  EXPECT_EQ(judged["media"][1]["at"]["reading"], 620);
  EXPECT_EQ(judged["media"][1]["lasting_words"], "cuts to reach 620 gf");
  EXPECT_EQ(judged["media_lasting_words"], "cuts to reach 620 gf");
  EXPECT_EQ(judged["names"][1]["lasting"]["median"], 31);
  EXPECT_EQ(judged["names"][4]["lasting"]["median"], 34);
}

TEST(ReportJson, SaysAtLeastWhereNoRunOfAnArmGotThere) {
  verdicts::Judgement judgement = verdicts::testing::made_judgement();
  judgement.arms[5].half_keenness->runs_that_reached = 0;
  judgement.arms[5].half_keenness->beyond_what_was_cut = true;
  const double least = judgement.arms[5].half_keenness->cuts.lo95;

  const json document = document_of(made_report(std::move(judgement)));

  EXPECT_EQ(faults_of_report(document), "");
  EXPECT_EQ(document["judgements"][0]["names"][5]["lasting"]["at_least"], least);
}

TEST(ReportJson, SaysWhatEachRunLastedToWhereItsMediumIsCompared) {
  verdicts::Judgement judgement = verdicts::testing::made_judgement();
  judgement.runs[0].compared_cuts = verdicts::testing::around(107, 0.1);
  judgement.runs[1].stopped_before_compared = true;
  judgement.runs[2].compared_cuts.reset();
  judgement.runs[2].lasted_cuts = 0;
  judgement.runs[2].failed_by_cuts = 5;
  judgement.runs[3].not_used_because = "voided: burr";

  const json document = document_of(made_report(std::move(judgement)));

  EXPECT_EQ(faults_of_report(document), "");
  const json& runs = document["judgements"][0]["runs"];
  EXPECT_EQ(runs[0]["lasting"], json({{"known", "exactly"}, {"cuts", 107.0}, {"words", "107"}}));
  EXPECT_EQ(runs[1]["lasting"]["words"], "at least 192");
  EXPECT_EQ(runs[2]["lasting"],
            json({{"known", "at_most"}, {"cuts", 5.0}, {"words", "at most 5.0"}}));
  EXPECT_EQ(runs[3].count("lasting"), 0U);
}

// Rounded as src/telling/rounded.h says; the curve's first point is 104 (1 + (1/34)^0.62) = 115.7.
TEST(ReportJson, HasTheWordsThatPicturesShow) {
  const json judged = document_of(made_report())["judgements"][0];

  EXPECT_EQ(judged["starts_words"], "thread push reading at 0 cuts, gf");
  EXPECT_EQ(judged["levels_words"], "reading, times its start");
  EXPECT_EQ(judged["order_words"], "order of cutting");
  EXPECT_EQ(judged["blocks"], json::array());
  EXPECT_EQ(judged["names"][0]["start_words"], "104 gf");
  EXPECT_EQ(judged["names"][0]["lasting"]["reading"], 208);
  EXPECT_EQ(judged["names"][0]["curve"].size(), judged["judgement"]["arms"][0]["curve"].size());
  EXPECT_EQ(judged["names"][0]["curve"][0]["cuts_words"], "1 cut");
  EXPECT_THAT(judged["names"][0]["curve"][0]["reading_words"].get<std::string>(),
              ::testing::StartsWith("116 gf ("));
  EXPECT_EQ(judged["comparisons"][0]["level_words"], json({"2", "4"}));
  EXPECT_EQ(judged["comparisons"][0]["levels_compared"], json({2, 2}));
  EXPECT_EQ(judged["runs"][0]["place"], 1);
}

// A ratio of 1.496 rounds to 1.5, the margin; rounded.h never lets it.
TEST(ReportJson, RoundsWhatFactorsDoAsTheTableDoes) {
  Report report = made_report();
  verdicts::FactorEffect effect{.factor = 0, .level = 1, .verdict = verdicts::Verdict::longer};
  effect.ratio.median = 1.496;
  effect.simultaneous = {.lo90 = 1.1, .hi90 = 1.9, .lo95 = 1.04, .hi95 = 2.0};
  report.judgements[0].judgement.factors = verdicts::FactorEffects{
      .factors = {{.what = "finish", .levels = {"9 µm", "1 µm"}}}, .effects = {effect}};

  const json told = document_of(report)["judgements"][0]["factor_effects"];

  EXPECT_EQ(told,
            json::array({{{"words", "finish: 1 µm against 9 µm"},
                          {"ratio_words", "1.496"},
                          {"interval_words", "1.04 to 2.0"},
                          {"settled", true}}}));
  EXPECT_EQ(faults_of_report(document_of(report)), "");
}

// The root of the cube of 80 x 125 x 100 is 100; 900 is struck out.
TEST(ReportJson, HasEachRunWithWhatWasReadAtItsCheckpoints) {
  const json run = document_of(made_report())["judgements"][0]["runs"][0];

  EXPECT_EQ(run["run"], 0);
  EXPECT_EQ(run["series"], json::array({0}));
  EXPECT_EQ(run["half_keenness_over_arm"], 1);
  ASSERT_EQ(run["checkpoints"].size(), 2U);
  EXPECT_EQ(run["checkpoints"][0]["readings"], 3);
  EXPECT_NEAR(run["checkpoints"][0]["reading"].get<double>(), 100, 1e-9);
  EXPECT_EQ(run["checkpoints"][0].count("below_resolution"), 0U);
}

TEST(ReportJson, MarksWhatIsBelowTheResolution) {
  Report report = made_report();
  report.judgements[0].runs[0].checkpoints[0].below_resolution = true;

  const json document = document_of(report);

  EXPECT_EQ(document["judgements"][0]["runs"][0]["checkpoints"][0]["below_resolution"], true);
  EXPECT_EQ(faults_of_report(document), "");
}

TEST(ReportJson, HoldsTheTrialWithWhatIsStruckDoubtfulOrHappened) {
  const json trial = document_of(made_report())["trial"];
  const json& run = trial["runs"][0];

  EXPECT_EQ(trial["blades"][0]["hardness_words"], "58 HRC");
  EXPECT_EQ(trial["blades"][1].count("steel"), 0U);
  EXPECT_EQ(trial["blades"][2]["specimens"][0],
            json({{"name", "C1"}, {"hardness_words", "61 HRC"}}));
  EXPECT_EQ(
      run["readings"][0],
      json({{"series", 0}, {"cuts", 0.0}, {"reading", 80.0}, {"station", "heel"}, {"repeat", 1}}));
  EXPECT_EQ(run["readings"][2]["struck"], "slipped");
  EXPECT_EQ(run["readings"][3]["doubtful"], "shook");
  EXPECT_EQ(run["events"],
            json::array({{{"kind", "twisted"}, {"cuts", 12.0}, {"words", "twisted a bit"}}}));
  EXPECT_EQ(run["edge_words"], "17° per side, 9 µm diamond");
  EXPECT_EQ(run.count("voided"), 0U);
}

TEST(ReportJson, HasTheDocumentedShapeForAllThatARunCanHold) {
  Report report = made_report();
  trials::Run& run = report.trial.runs[1];
  run.arm.medium.condition = "wet";
  run.specimen = "B1";
  run.medium_lot = "7";
  run.operator_name = "R.";
  run.date = "2026-11-20";
  run.sharpenings_since_new = 4;
  run.edge_lives = {{.test = "paper",
                     .lasted_cuts = 20,
                     .failed_by_cuts = 30,
                     .level = 3,
                     .struck_reason = "wet paper"},
                    {.lasted_cuts = 20}};
  run.deviations = {"other board"};
  run.notes = {"rained"};
  run.voided_reason = "burr";
  using enum trials::EventKind;
  for (const trials::EventKind kind : {twisted, hit_something, board_touched, wet, pause, other}) {
    run.events.push_back({.kind = kind, .cuts = 3});
  }

  const json document = document_of(report);

  EXPECT_EQ(faults_of_report(document), "");
  EXPECT_EQ(document["trial"]["runs"][1]["voided"], "burr");
  EXPECT_EQ(document["trial"]["runs"][1]["edge_lives"][1].count("failed_by_cuts"), 0U);
}

TEST(ReportJson, HasTheDocumentedShapeOfEvidenceAndOfABareTrial) {
  Report report = made_report();
  report.trial.series.push_back({.kind = *trials::find_reading_kind("glint"), .unit = "%"});
  report.trial.runs.push_back(
      {.name = "2", .arm = {.blade = "A"}, .readings = {{.series = 1, .cuts = 0, .reading = 0}}});
  report.judgements[0].judgement.comparisons.clear();

  const json document = document_of(report);

  EXPECT_EQ(faults_of_report(document), "");
  EXPECT_EQ(document["trial"]["series"][1]["makes_curves"], false);
  EXPECT_EQ(document["trial"]["runs"][6].count("edge_words"), 0U);
}

TEST(ReportJson, CannotEndTheScriptElementItStandsIn) {
  Report report = made_report();
  report.trial.runs[0].notes = {"</script><script>alert(\"<!--\")</script>"};

  const std::string text = report_to_json_in_page(report);

  EXPECT_THAT(text, Not(HasSubstr("<")));
  EXPECT_THAT(text, Not(HasSubstr("\n")));
  EXPECT_EQ(json::parse(text), document_of(report));
}

TEST(ReportJson, InAPageHasNoCharacterThatWouldTurnWhatStandsBehindIt) {
  Report report = made_report();
  report.title = "a\xE2\x80\xAE\xC2\x85 \\ \\b\b\x1B\n \xD7\x90";

  const json document = json::parse(report_to_json_in_page(report));

  EXPECT_EQ(document["title"],
            "a\xEF\xBF\xBD\xEF\xBF\xBD \\ \\b\xEF\xBF\xBD\xEF\xBF\xBD\n \xD7\x90");
  EXPECT_EQ(document_of(report)["title"], report.title);
}

TEST(ReportJson, ReplacesBytesThatAreNoText) {
  Report report = made_report();
  report.title = "felt \xFF";

  EXPECT_EQ(document_of(report)["title"], "felt \xEF\xBF\xBD");
}

TEST(ReportJson, RefusesWhatItHasNoWordFor) {
  Report report = made_report();
  report.trial.runs[0].readings[0].reading = std::numeric_limits<double>::infinity();
  EXPECT_THROW((void)report_to_json(report), std::logic_error);

  report = made_report();
  report.judgements.clear();
  EXPECT_THROW((void)report_to_json(report), std::logic_error);
}

}  // namespace
}  // namespace keenfall::wire
