// Resharpening by what is one's own: passes counted, stones and steels of a file.
#include "cli/asked_resharpening_test.h"
#include "wire/schema_faults_test.h"
#include "workbench/own_file_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <string>

namespace keenfall::cli {
namespace {

using nlohmann::json;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

Words a_count(const Words& more = {}) {
  Words words = {"--stone=diamond", "--counted-passes=20", "--counted-height=5um"};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

TEST(ResharpenByOnesOwn, SaysThatItWasCalibratedAndHowTheRangeShrank) {
  const std::string text = as_one_line(text_of(a_count()));

  EXPECT_THAT(text, HasSubstr("Calibrated by 20 passes counted on diamond: 0.14 to 0.17"));
  EXPECT_THAT(text, testing::ContainsRegex("Without the count the answer would be [0-9]+ to"));
  EXPECT_THAT(text, HasSubstr("own-count: your own count of passes"));
  EXPECT_THAT(text, Not(HasSubstr("steel worn off by force and path")));
  EXPECT_THAT(text, Not(HasSubstr("outside of the")));
  EXPECT_THAT(as_one_line(text_of({})), Not(HasSubstr("Calibrated")));
}

// A thousand passes for what diamond takes in twenty are a slip, in the count or in a unit.
TEST(ResharpenByOnesOwn, AsksToLookAgainAtACountBeyondTextbooks) {
  EXPECT_THAT(
      as_one_line(text_of({"--stone=diamond",
                           "--counted-passes=1000",
                           "--counted-width=80um",
                           "--counted-angle=22"})),
      HasSubstr("all of it outside of the 0.0007 to 0.007 of textbooks: look at the count"));
}

// A reading of 4 um +- 0.4 gives 0.0067 to 0.0082 mm3/(N m): 0.007 is in it.
TEST(ResharpenByOnesOwn, IsNotAlarmedByACountThatMayBeWhatTextbooksSay) {
  const auto text_with = [](const std::string& error) {
    return as_one_line(resharpen({"--steel=A11",
                                  "--angle=15deg",
                                  "--thickness=0.3mm",
                                  "--chip=12um",
                                  "--stone=alumina",
                                  "--counted-passes=20",
                                  "--counted-height=4um",
                                  "--counted-error=" + error})
                           .out);
  };

  EXPECT_THAT(text_with("0.4um"), AllOf(HasSubstr("Calibrated by"), Not(HasSubstr("textbooks"))));
  EXPECT_THAT(text_with("0.01um"), HasSubstr("textbooks"));
}

TEST(ResharpenByOnesOwn, CountsOnePassAsOne) {
  const std::string text = as_one_line(resharpen({"--steel=C75S",
                                                  "--angle=15",
                                                  "--thickness=0.05mm",
                                                  "--chip=0.1um",
                                                  "--stone=diamond",
                                                  "--force=40N"})
                                           .out);

  EXPECT_THAT(text, AllOf(HasSubstr("takes 1 pass on diamond: "), Not(HasSubstr(" 1 passes"))));
  EXPECT_THAT(text, Not(HasSubstr("half of them")));
}

TEST(ResharpenByOnesOwn, WritesTheCountAsJson) {
  const json document = json_of(a_count({"--cuts=200", "--micro-bevel=20"}));

  EXPECT_EQ(wire::testing::faults_against_schema(document, "resharpening.schema.json"), "");
  EXPECT_EQ(document["counted"]["passes"], 20);
  const json& way = document["ways"][1];
  EXPECT_LT(way["stones"][0]["passes"]["hi90"], way["calibration"]["passes_of_model"]["hi90"]);
  EXPECT_EQ(way["best_moment"]["draws"], 400);
}

TEST(ResharpenByOnesOwn, RefusesACountThatSaysTooLittle) {
  const auto refusal = [](const Words& more) { return as_one_line(resharpen(an_edge(more)).err); };

  EXPECT_THAT(refusal({"--counted-height=4um"}),
              AllOf(HasSubstr("--stone is missing"), HasSubstr("--counted-passes is missing")));
  EXPECT_THAT(refusal({"--stone=SiC", "--counted-passes=20"}),
              HasSubstr("--counted-passes: a count tells nothing without what was measured"));
  EXPECT_THAT(refusal({"--stone=SiC", "--counted-passes=20.5", "--counted-height=4um"}),
              HasSubstr("--counted-passes: passes are counted whole, and 20.5 is not"));
  EXPECT_THAT(refusal(a_count({"--counted-error=9um"})),
              HasSubstr("--counted-height: what was measured before and after differs by no more"));
}

TEST(ResharpenByOnesOwn, TakesStonesAndSteelsOfOnesOwn) {
  const testing_files::OwnFile stones(
      "name,grain_um,abrasive_hv,cutting_power_ratio,blunt_share_fraction\nbench,25,2000,1.2,0."
      "5\n");
  const std::string text = text_of({"--stones=" + stones.path(), "--stone=bench", "--compare"});

  EXPECT_THAT(as_one_line(text), HasSubstr("passes on bench"));
  EXPECT_THAT(text, testing::ContainsRegex("bench +25 µm"));
  EXPECT_THAT(text, HasSubstr("fused alumina"));
  EXPECT_EQ(
      wire::testing::faults_against_schema(json_of({"--stones=" + stones.path(), "--stone=bench"}),
                                           "resharpening.schema.json"),
      "");
}

TEST(ResharpenByOnesOwn, TakesASteelOfOnesOwn) {
  const testing_files::OwnFile steels(
      "name,hardness_hrc,matrix_hv,matrix_hv_lo,carbide_volume_fraction,toughness_mpa_sqrt_m\n"
      "our strip,59,660,600,0.02,30\n");
  const auto of = [&](const std::string& steel) {
    return resharpen({"--steels=" + steels.path(),
                      "--steel=" + steel,
                      "--angle=17",
                      "--thickness=0.3mm",
                      "--chip=12um"})
        .out;
  };

  EXPECT_THAT(of("our strip"), HasSubstr("our strip (59 HRC)"));
  EXPECT_THAT(of("our strip 60 HRC"), HasSubstr("our strip (60 HRC)"));
}

TEST(ResharpenByOnesOwn, NamesEveryWrongCellOfAFile) {
  const testing_files::OwnFile stones("name,abrasive_hv\na,soft\nb,\n");
  const Outcome outcome = resharpen(an_edge({"--stones=" + stones.path(), "--edge=1"}));

  EXPECT_EQ(outcome.code, ExitCode::table_refused);
  EXPECT_THAT(outcome.err,
              AllOf(HasSubstr("line 2, column abrasive_hv"),
                    HasSubstr("line 3, column abrasive_hv"),
                    HasSubstr("--edge: “1” has no unit"),
                    HasSubstr("3 problems; nothing was answered.")));
}

}  // namespace
}  // namespace keenfall::cli
