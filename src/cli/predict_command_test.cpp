#include "cli/predict_command.h"

#include "cli/predict_request.h"
#include "cli/predict_text.h"
#include "cli/widest_line.h"
#include "wire/schema_faults_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <unistd.h>

namespace keenfall::cli {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;

Surroundings around() {
  return {.look = {.width = 80},
          .use_cases = {},
          .is_stop_asked_for = [] { return false; },
          .seconds_now = [] { return 0.0; },
          .write_progress = {},
          .program_version = "0.1.0"};
}

Outcome predict(std::vector<std::string> words) {
  words.insert(words.end(), {"--draws=50", "--runs=2"});
  return predict_command(words, around());
}

wear::PredictedBlade blade(const std::string& words) {
  return predicted_blade(workbench::apex_catalogue({}).value(), words).value();
}

TEST(PredictCommand, AnswersFirstWithARangeAndNeverWithOneNumber) {
  const Outcome outcome = predict_command(
      std::vector<std::string>{
          "AISI A11", "75Ni8", "--medium=new sisal matting", "--draws=50", "--runs=2"},
      around());

  EXPECT_EQ(outcome.code, ExitCode::answered) << outcome.err;
  EXPECT_THAT(outcome.out, HasSubstr("highest where it is"));
  EXPECT_EQ(outcome.out.find("…"), std::string::npos);
  EXPECT_THAT(outcome.out, HasSubstr("At 54 HRC it is softer than the 57 to 62 HRC at which"));
  EXPECT_TRUE(outcome.out.starts_with("In new sisal matting, by a push reading, AISI A11"));
  EXPECT_THAT(
      outcome.out,
      AllOf(HasSubstr("times as long"), HasSubstr("of 50 draws)"), HasSubstr("not validated")));
  EXPECT_LE(widest_line(outcome.out), 80);
}

TEST(PredictCommand, WritesTheDocumentedJson) {
  const Outcome outcome = predict({"AISI D2 60HRC", "C75S", "--reading=slice", "--json"});

  const auto document = nlohmann::json::parse(outcome.out);
  EXPECT_EQ(wire::testing::faults_against_schema(document, "prediction.schema.json"), "");
  EXPECT_EQ(document["asked"]["a"]["hardness_hrc"], 60);
  EXPECT_EQ(document["asked"]["reading"], "slice");
  EXPECT_EQ(document["asked"]["draws"], 50);
}

TEST(PredictCommand, RefusesAllThatIsWrongAtOnce) {
  const Outcome outcome =
      predict({"unobtainium", "--medium=jelly", "--reading=taste", "--mediun=x"});

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  EXPECT_THAT(
      outcome.err,
      AllOf(HasSubstr("predict compares two blades; 1 were named"),
            HasSubstr("jelly"),
            HasSubstr("--medium: no medium"),
            HasSubstr("There is no option \"--mediun\" here. Accepted: did you mean --medium"),
            HasSubstr("--reading must be push or slice")));
  EXPECT_EQ(outcome.err.find("column blade"), std::string::npos);
}

TEST(PredictCommand, TakesTheMediumOfAFileThatHoldsOne) {
  const auto path = std::filesystem::temp_directory_path() /
                    ("keenfall-predict-" + std::to_string(getpid()) + ".csv");
  std::ofstream(path) << "name,abrasive_hv,groove_width_um,"
                         "reference_wear_rate_mm3_per_newton_metre\nfelt,600,0.5,1e-6\n";

  const Outcome outcome = predict({"AISI D2", "C75S", "--media=" + path.string()});
  std::filesystem::remove(path);

  EXPECT_TRUE(outcome.out.starts_with("In felt, by a push reading")) << outcome.err;
}

TEST(PredictedBlades, AreASteelThenHardnessAndAngleInAnyOrder) {
  EXPECT_EQ(blade("AISI D2").apex_angle.deg, 20);
  EXPECT_EQ(blade("AISI D2").steel.hardness_hrc, 61);
  EXPECT_EQ(blade("AISI D2 60HRC 17deg-per-side").apex_angle.deg, 17);
  EXPECT_EQ(blade("C75S (EN 1.1248) 34deg-inclusive 58.5HRC").apex_angle.deg, 17);
  EXPECT_EQ(blade("C75S (EN 1.1248) 34deg-inclusive 58.5HRC").steel.hardness_hrc, 58.5);
}

TEST(PredictedBlades, AreTakenUpToSixHrcFromTheirTablesOwn) {
  EXPECT_EQ(blade("75Ni8 60HRC").steel.hardness_hrc, 60);
  EXPECT_THAT(
      predicted_blade(workbench::apex_catalogue({}).value(), "75Ni8 61HRC").error().sentence,
      HasSubstr("can be asked for from 48 to 60 HRC, not at 61 HRC"));
}

TEST(PredictedBlades, OfAnUnknownSteelOrFarFromItsHardnessAreRefused) {
  const auto catalogue = workbench::apex_catalogue({}).value();

  EXPECT_THAT(predicted_blade(catalogue, "unobtainium").error().sentence,
              HasSubstr("blade “unobtainium”: "));
  EXPECT_THAT(predicted_blade(catalogue, "C75S 58").error().sentence,
              HasSubstr("“58” after C75S has no unit"));
  EXPECT_THAT(predicted_blade(catalogue, "AISI D2 50HRC").error().sentence, HasSubstr("50 HRC"));
}

TEST(PredictionText, SaysWhyTheRegressionHasNoOpinion) {
  const wear::PredictionAsked asked{.a = blade("AISI D2"), .b = blade("C75S")};

  EXPECT_THAT(
      prediction_text(asked, {.no_card_because = "It was fitted to other angles."}, {.width = 200}),
      AllOf(HasSubstr("no range can be given"),
            HasSubstr("has no opinion: It was fitted to other angles.")));
}

}  // namespace
}  // namespace keenfall::cli
