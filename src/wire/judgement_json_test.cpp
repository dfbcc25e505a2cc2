#include "wire/judgement_json.h"

#include "verdicts/made_judgement_test.h"
#include "wire/schema_faults_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <limits>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace keenfall::wire {
namespace {

using nlohmann::json;
using testing::faults_against_schema;
using ::testing::HasSubstr;
using ::testing::Not;
using verdicts::Judgement;
using verdicts::testing::made_judgement;

json parsed(const std::vector<Judgement>& judgements) {
  return json::parse(judgement_to_json({.program_version = "0.1.0", .judgements = judgements}));
}

std::string faults_in(const json& document) {
  return faults_against_schema(document, "judgement.schema.json");
}

std::string text_of(const Judgement& judgement) {
  return judgement_to_json({.program_version = "0.1.0", .judgements = {judgement}});
}

TEST(JudgementJson, HasTheDocumentedShape) { EXPECT_EQ(faults_in(parsed({made_judgement()})), ""); }

TEST(JudgementJson, SaysOnceWhatIsCounted) {
  Judgement judgement = made_judgement();
  judgement.counted = {.one = "stroke", .many = "strokes"};

  const json document = parsed({judgement});

  EXPECT_EQ(document["counted"], "strokes");
  EXPECT_EQ(faults_in(document), "");
  EXPECT_EQ(parsed({made_judgement()})["counted"], "cuts");
}

TEST(JudgementJson, HasTheDocumentedShapeForEveryVerdict) {
  using verdicts::Verdict;
  for (const Verdict verdict : {Verdict::longer_and_worth_having,
                                Verdict::longer,
                                Verdict::longer_but_too_little_to_matter,
                                Verdict::practically_the_same,
                                Verdict::shorter_but_too_little_to_matter,
                                Verdict::shorter,
                                Verdict::shorter_by_enough_to_matter,
                                Verdict::not_settled}) {
    Judgement judgement = made_judgement();
    judgement.comparisons[0].verdict = verdict;
    judgement.comparisons[0].single_verdict = verdict;

    const json document = parsed({judgement});

    EXPECT_EQ(faults_in(document), "");
    EXPECT_EQ(document["comparisons"][0]["verdict"], verdicts::in_words(verdict));
  }
}

TEST(JudgementJson, HasTheDocumentedShapeWhereverTheArmsAreCompared) {
  for (const auto what : {verdicts::ComparedAt::half_keenness,
                          verdicts::ComparedAt::level,
                          verdicts::ComparedAt::common_reading}) {
    Judgement judgement = made_judgement();
    judgement.stop_reading = 400;
    judgement.arms[0].common_reading = judgement.arms[0].half_keenness;
    judgement.comparisons[0].at = {.what = what, .level = 3, .reading = 400};

    EXPECT_EQ(faults_in(parsed({judgement})), "");
  }
}

TEST(JudgementJson, HasTheDocumentedShapeForEveryMotionAndDirection) {
  for (const auto motion : {trials::Motion::not_recorded,
                            trials::Motion::push,
                            trials::Motion::draw,
                            trials::Motion::slice}) {
    Judgement judgement = made_judgement();
    judgement.kind.keener_when = trials::KeenerWhen::higher;
    judgement.arms[0].arm.method = {
        .motion = motion, .as_written = "rocking", .board = "end grain"};
    judgement.arms[0].arm.medium.condition = "wet";

    EXPECT_EQ(faults_in(parsed({judgement})), "");
  }
}

TEST(JudgementJson, HasTheDocumentedShapeForMatchedDifferingAndUnrecordedThings) {
  using verdicts::Matching;
  Judgement judgement = made_judgement();
  judgement.comparisons[0].claim_about = verdicts::ClaimAbout::the_steels;
  judgement.comparisons[0].also_differs = {
      {.what = "finish", .matching = Matching::matched, .a = "9 µm", .b = "9 µm"},
      {.what = "steel", .matching = Matching::differs, .a = "C75S", .b = "X153CrMoV12"},
      {.what = "board", .matching = Matching::not_recorded}};

  const json document = parsed({judgement});

  EXPECT_EQ(faults_in(document), "");
  EXPECT_EQ(document["comparisons"][0]["also_differs"][2].count("a"), 0U);
}

TEST(JudgementJson, HasTheDocumentedShapeWhenTheFitIsNotUsable) {
  Judgement judgement = made_judgement();
  judgement.comparisons.clear();
  judgement.fit.usable = false;
  judgement.fit.reasons = {"R-hat is 1.2; at most 1.01 is needed."};
  judgement.runs[0].start_reading.reset();
  judgement.runs[0].half_keenness_cuts.reset();
  judgement.runs[0].not_used_because = "every reading is struck";

  EXPECT_EQ(faults_in(parsed({judgement})), "");
}

TEST(JudgementJson, PutsOtherKindsOfReadingBelowTheFirst) {
  Judgement second = made_judgement();
  second.kind = *trials::find_reading_kind("card_bite");
  second.thread = "card";

  const json document = parsed({made_judgement(), second});

  EXPECT_EQ(faults_in(document), "");
  EXPECT_EQ(document["kind"]["name"], "thread_push");
  EXPECT_EQ(document["also_judged"][0]["kind"]["name"], "card_bite");
  EXPECT_EQ(document["also_judged"][0]["kind"]["thread"], "card");
}

TEST(TheSchema, RefusesADocumentThatLacksAField) {
  json document = parsed({made_judgement()});
  document["comparisons"][0].erase("verdict");

  EXPECT_NE(faults_in(document), "");
}

TEST(TheSchema, RefusesAVerdictNobodyGives) {
  json document = parsed({made_judgement()});
  document["comparisons"][0]["verdict"] = "better";

  EXPECT_NE(faults_in(document), "");
}

TEST(TheSchema, RefusesAFieldItDoesNotKnow) {
  json document = parsed({made_judgement()});
  document["arms"][0]["score"] = 7;

  EXPECT_NE(faults_in(document), "");
}

TEST(TheSchema, RefusesTextWhereANumberBelongs) {
  json document = parsed({made_judgement()});
  document["arms"][0]["half_keenness_cuts"]["median"] = "108";

  EXPECT_NE(faults_in(document), "");
}

TEST(JudgementJson, KeepsNumbersAsTheyAre) {
  Judgement judgement = made_judgement();
  judgement.worth_it_margin = 1.5;
  judgement.fit.cpu_seconds = 0.1;

  EXPECT_THAT(text_of(judgement), HasSubstr("\"worth_it_margin\": 1.5,"));
  EXPECT_THAT(text_of(judgement), HasSubstr("\"cpu_seconds\": 0.1\n"));
}

TEST(JudgementJson, ReadsBackToTheSameDouble) {
  Judgement judgement = made_judgement();
  judgement.arms[0].shape->median = 1.0 / 3.0;

  EXPECT_EQ(parsed({judgement})["arms"][0]["shape"]["median"].get<double>(), 1.0 / 3.0);
}

TEST(JudgementJson, RefusesToWriteWhatIsNotANumber) {
  for (const double broken :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    Judgement judgement = made_judgement();
    judgement.arms[1].curve[0].reading.hi95 = broken;

    EXPECT_THROW((void)text_of(judgement), std::logic_error);
  }
}

TEST(JudgementJson, RefusesToWriteNothing) {
  EXPECT_THROW((void)judgement_to_json({.program_version = "0.1.0"}), std::logic_error);
}

// 2^53 is the first integer after which binary64 skips one (IEEE 754).
TEST(JudgementJson, WritesASeedAsTextOnceADoubleCouldNotHoldIt) {
  Judgement small = made_judgement();
  small.fit.seed = 9007199254740991U;
  Judgement large = made_judgement();
  large.fit.seed = 18446744073709551615U;

  EXPECT_EQ(parsed({small})["fit"]["seed"], 9007199254740991U);
  EXPECT_EQ(parsed({large})["fit"]["seed"], "18446744073709551615");
  EXPECT_EQ(faults_in(parsed({small})), "");
  EXPECT_EQ(faults_in(parsed({large})), "");
}

TEST(JudgementJson, GivesFurtherRunsAsANumberOrAsOverFortyOrNotAtAll) {
  Judgement judgement = made_judgement();
  judgement.comparisons[4].verdict = verdicts::Verdict::not_settled;
  judgement.comparisons[4].further_runs = verdicts::FurtherRuns{};

  const json document = parsed({judgement});

  EXPECT_EQ(document["comparisons"][5]["further_runs_each"], 8);
  EXPECT_EQ(document["comparisons"][4]["further_runs_each"], "over 40");
  EXPECT_EQ(document["comparisons"][0].count("further_runs_each"), 0U);
  EXPECT_EQ(faults_in(document), "");
}

TEST(JudgementJson, SaysAtLeastWhereNoRunGotThere) {
  Judgement judgement = made_judgement();
  verdicts::CutsToLevel& reached = *judgement.arms[0].half_keenness;
  reached.beyond_what_was_cut = true;
  reached.runs_that_reached = 0;

  const json document = parsed({judgement});

  EXPECT_EQ(document["arms"][0]["half_keenness_cuts"]["at_least"], reached.cuts.lo95);
  EXPECT_FALSE(document["arms"][1]["half_keenness_cuts"].contains("at_least"));
  EXPECT_EQ(faults_in(document), "");
}

TEST(JudgementJson, LeavesOutWhatWasNotRecorded) {
  Judgement judgement = made_judgement();
  judgement.arms[0].arm.edge = {};
  judgement.arms[0].arm.method = {};

  const json document = parsed({judgement});

  EXPECT_EQ(document["arms"][0]["edge"], json::object());
  EXPECT_EQ(document["arms"][0]["method"], json::object());
  EXPECT_EQ(document["kind"].count("thread"), 0U);
  EXPECT_EQ(faults_in(document), "");
}

TEST(JudgementJson, NamesAnglesPerSide) {
  EXPECT_EQ(parsed({made_judgement()})["arms"][0]["edge"]["bevel_angle_per_side_deg"], 17.0);
}

TEST(JudgementJson, ReplacesBytesThatAreNotText) {
  Judgement judgement = made_judgement();
  judgement.trial = "caf\xe9";

  EXPECT_THAT(text_of(judgement), HasSubstr("caf\xEF\xBF\xBD"));
}

TEST(JudgementJson, HoldsNoNulls) {
  EXPECT_THAT(text_of(made_judgement()), Not(HasSubstr("null")));
}

TEST(JudgementJson, SaysWhatHoldsAcrossMediaAndWhatFactorsDo) {
  Judgement judgement = made_judgement();
  judgement.factors = verdicts::testing::made_factors(verdicts::testing::around(1.1, 0.3));
  judgement.comparisons.front().claim_about = verdicts::ClaimAbout::the_steels;
  judgement.comparisons.front().ratio_these_blades = verdicts::testing::around(3.2, 0.2);
  const json document = parsed({judgement});

  EXPECT_EQ(faults_in(document), "");
  EXPECT_EQ(document["media_compared"]["blades"][2]["blade"], "C");
  EXPECT_EQ(document["media_compared"]["media"][1]["medium"], "uplifted matting");
  EXPECT_EQ(document["media_compared"]["interactions"][0]["advantage"],
            "depends on the medium, by enough to matter");
  EXPECT_EQ(document["factor_effects"]["factors"][0]["levels"][0], "15° per side");
  EXPECT_EQ(document["comparisons"][0]["ratio_these_blades"]["median"], 3.2);
  EXPECT_EQ(document["comparisons"][0]["run_by_run"]["by_blocks"]["blocks"], 6);
}

}  // namespace
}  // namespace keenfall::wire
