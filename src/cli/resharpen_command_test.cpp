#include "cli/resharpen_command.h"

#include "cli/widest_line.h"
#include "wire/schema_faults_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>
#include <vector>

namespace keenfall::cli {
namespace {

using nlohmann::json;
using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

using Words = std::vector<std::string>;

// The worked number of docs/methods/resharpening.md.
Words an_edge(const Words& more = {}) {
  Words words = {
      "--steel=1.2379", "--angle=17deg-per-side", "--thickness=300um", "--land=3um", "--chip=12um"};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

Outcome resharpen(const Words& words, const Look& look = {.width = 100}) {
  Surroundings surroundings;
  surroundings.look = look;
  surroundings.program_version = "0.1.0";
  return resharpen_command(words, surroundings);
}

std::string text_of(const Words& more, const Look& look = {.width = 100}) {
  return resharpen(an_edge(more), look).out;
}

// Without the breaks of lines.
std::string as_one_line(std::string text) {
  std::ranges::replace(text, '\n', ' ');
  return text;
}

json json_of(const Words& more) {
  Words words = an_edge(more);
  words.emplace_back("--json");
  return json::parse(resharpen(words).out);
}

TEST(ResharpenCommand, AnswersFirstInOneSentenceAsARange) {
  const std::string text = as_one_line(text_of({"--stone=alumina"}));

  EXPECT_THAT(text.substr(0, text.find('.')),
              AllOf(HasSubstr("Resetting the bevel on X153CrMoV12 (61 HRC"),
                    HasSubstr(" to "),
                    HasSubstr("passes on fused alumina"),
                    HasSubstr("half of them on each side")));
  EXPECT_THAT(text, Not(HasSubstr("diamond")));
}

// 655 passes on fused alumina and 76 on diamond, worked by tests/reference/resharpening.py.
TEST(ResharpenCommand, ShowsEveryStoneWhereNoneIsAskedForOrToCompare) {
  for (const Words& more : {Words{}, Words{"--stone=alumina", "--compare"}}) {
    const std::string text = text_of(more);

    EXPECT_THAT(text, HasSubstr("Diamond takes"));
    EXPECT_THAT(text, testing::ContainsRegex("fused alumina +FEPA-F 220 .* 650 "));
    EXPECT_THAT(text, testing::ContainsRegex("diamond +45 .* 76 "));
  }
}

TEST(ResharpenCommand, AnswersForAMicroBevelBesideTheWholeBevel) {
  const std::string text = text_of({"--micro-bevel=20deg-per-side"});

  EXPECT_THAT(text, HasSubstr("Setting a micro-bevel of 20° per side"));
  EXPECT_THAT(text, HasSubstr("Resetting the bevel"));
  EXPECT_THAT(text, HasSubstr("the apex must rise by 16.9 µm, 0.054 mm³"));
}

TEST(ResharpenCommand, TakesAnglesOfEitherKindAndLengthsOfAnyUnit) {
  const Words other = {"--steel=X153CrMoV12",
                       "--angle=34deg-inclusive",
                       "--thickness=0.3mm",
                       "--land=0.003mm",
                       "--chip=12um",
                       "--edge=10cm"};

  EXPECT_EQ(resharpen(other).out, resharpen(an_edge()).out);
}

TEST(ResharpenCommand, SaysWhatItHangsOnWhatItRestsOnAndAWordOnSafety) {
  const std::string text = text_of({});

  EXPECT_THAT(text, HasSubstr("steel worn off by force and path"));
  EXPECT_THAT(text, HasSubstr("A model, not a measurement"));
  EXPECT_THAT(text, HasSubstr("practice: no source"));
  EXPECT_LT(text.find("A model"), text.find("Safety: "));
}

TEST(ResharpenCommand, CountsDressing) {
  const std::string text = text_of({"--dress-every=30", "--dressing-time=30s"});

  EXPECT_THAT(text, HasSubstr("the stone dressed every 30 passes in 0.5 min"));
  EXPECT_LT(json_of({"--dress-every=30"})["ways"][0]["stones"][0]["passes"]["typical"],
            json_of({})["ways"][0]["stones"][0]["passes"]["typical"]);
}

// A closed form on a stone that stays fresh is in sharpening; here, that it is said.
TEST(ResharpenCommand, SaysWhenToSharpenAgainWhereItIsToldHowFastDamageGrew) {
  const std::string text =
      as_one_line(text_of({"--micro-bevel=20deg-per-side", "--cuts=200", "--setup=3min"}));

  EXPECT_THAT(text, HasSubstr("as seen after 200 cuts, with 3 min to set up"));
  EXPECT_THAT(text, HasSubstr("cuts costs least, about"));
  EXPECT_THAT(text, HasSubstr("the later the cheaper, as far as 800 cuts"));
  EXPECT_THAT(text_of({}), Not(HasSubstr("costs least")));
}

TEST(ResharpenCommand, WritesJsonThatKeepsItsSchema) {
  for (const Words& more : {Words{},
                            Words{"--micro-bevel=20deg-per-side", "--cuts=200"},
                            Words{"--stone=diamond", "--dress-every=30", "--seed=7"}}) {
    EXPECT_EQ(wire::testing::faults_against_schema(json_of(more), "resharpening.schema.json"), "");
  }
  const json document = json_of({});
  EXPECT_NEAR(document["ways"][0]["stones"][0]["passes"]["typical"].get<double>(), 654.714, 2e-3);
  EXPECT_NEAR(document["ways"][0]["stones"][3]["passes"]["typical"].get<double>(), 75.511, 2e-3);
}

TEST(ResharpenCommand, IsRepeatableBySeed) {
  EXPECT_EQ(text_of({"--seed=7"}), text_of({"--seed=7"}));
  EXPECT_NE(json_of({"--seed=7"})["ways"][0]["stones"], json_of({"--seed=8"})["ways"][0]["stones"]);
}

TEST(ResharpenCommand, NamesEveryOptionThatIsMissing) {
  const Outcome outcome = resharpen({});

  EXPECT_EQ(outcome.code, ExitCode::wrong_usage);
  EXPECT_THAT(outcome.out, IsEmpty());
  EXPECT_THAT(outcome.err,
              AllOf(HasSubstr("--steel is missing"),
                    HasSubstr("--angle is missing"),
                    HasSubstr("--thickness is missing"),
                    HasSubstr("--land is missing: there is no damage to take away")));
}

TEST(ResharpenCommand, RefusesAnEdgeWithoutDamage) {
  EXPECT_THAT(
      resharpen({"--steel=1.2379", "--angle=17deg-per-side", "--thickness=300um", "--chip=0um"})
          .err,
      HasSubstr("with no land and no chip there is nothing to take away"));
}

TEST(ResharpenCommand, RefusesValuesWithTheOptionTheyCameBy) {
  const auto refusal = [](const std::string& option) { return resharpen(an_edge({option})).err; };

  EXPECT_THAT(refusal("--edge=100"), HasSubstr("--edge: “100” has no unit"));
  EXPECT_THAT(refusal("--edge=0mm"), HasSubstr("--edge: an edge length of 0"));
  EXPECT_THAT(refusal("--micro-bevel=20"), HasSubstr("--micro-bevel: “20” has no unit"));
  EXPECT_THAT(refusal("--micro-bevel=10deg-per-side"), HasSubstr("a micro-bevel must be steeper"));
  EXPECT_THAT(refusal("--primary-angle=20deg-per-side"), HasSubstr("--primary-angle: the faces"));
  EXPECT_THAT(refusal("--stone=cheese"), HasSubstr("--stone: there is no stone of “cheese”"));
  EXPECT_THAT(refusal("--dress-every=0"), HasSubstr("--dress-every: “0” is no number above zero"));
  EXPECT_THAT(refusal("--seed=x"), HasSubstr("--seed must be a whole number, not \"x\"."));
  EXPECT_THAT(refusal("--setup=3min"), HasSubstr("--cuts is missing"));
  EXPECT_THAT(refusal("D2"), HasSubstr("stands alone"));
  EXPECT_THAT(resharpen({"--steel=unobtainium"}).err, HasSubstr("--steel: the steel"));
}

// An exit code of our own fault is never the answer to what was typed.
TEST(ResharpenCommand, AnswersOrRefusesHugeAndTinyNumbers) {
  struct Case {
    std::string option;
    std::string unit;
  };
  const std::vector<Case> cases = {{"--angle", "deg-per-side"},
                                   {"--primary-angle", "deg-per-side"},
                                   {"--micro-bevel", "deg-per-side"},
                                   {"--thickness", "mm"},
                                   {"--land", "um"},
                                   {"--chip", "um"},
                                   {"--edge", "mm"},
                                   {"--force", "N"},
                                   {"--stroke", "mm"},
                                   {"--pace", ""},
                                   {"--dress-every", ""},
                                   {"--dressing-time", "min"},
                                   {"--cuts", ""},
                                   {"--setup", "min"}};
  for (const Case& each : cases) {
    for (const char* number : {"5e-324", "1e-307", "1e-5", "1e5", "1e306", "1e308"}) {
      const std::string word = each.option + "=" + number + each.unit;
      Words words;
      for (const std::string& usual : an_edge({"--cuts=400", "--setup=3min", "--dress-every=30"})) {
        if (!usual.starts_with(each.option + "=")) words.push_back(usual);
      }
      words.push_back(word);

      const Outcome outcome = resharpen(words);

      if (outcome.code == ExitCode::answered) {
        EXPECT_THAT(outcome.out, Not(testing::ContainsRegex("nan|inf[^o]"))) << word;
      } else {
        EXPECT_EQ(outcome.code, ExitCode::wrong_usage) << word;
        EXPECT_THAT(outcome.err, HasSubstr(each.option + ": ")) << word;
      }
    }
  }
}

TEST(ResharpenCommand, SaysWhichNumbersAreAccepted) {
  const auto refusal = [](const Words& more) { return as_one_line(resharpen(an_edge(more)).err); };

  EXPECT_THAT(refusal({"--cuts=1e308"}), HasSubstr("1 to 1,000,000,000 cuts"));
  EXPECT_THAT(refusal({"--cuts=400", "--setup=1e306min"}), HasSubstr("0 to 1,000,000 min"));
  EXPECT_THAT(refusal({"--force=1e-323N"}), HasSubstr("0.001 to 10,000 N"));
  EXPECT_THAT(refusal({"--pace=1e-307"}), HasSubstr("0.001 to 10,000 passes a minute"));
  EXPECT_THAT(refusal({"--edge=1e308mm"}), HasSubstr("0.001 to 100,000 mm"));
}

// Between planes that all but coincide, and on a micro-bevel that is all but flat, numbers run off.
TEST(ResharpenCommand, AnswersOrRefusesAnglesAtTheirLimits) {
  for (const char* option : {"--primary-angle=16.999999999999996deg-per-side",
                             "--micro-bevel=17.000000000000004deg-per-side",
                             "--micro-bevel=89.99999999999999deg-per-side"}) {
    const ExitCode code = resharpen(an_edge({option, "--cuts=400"})).code;
    EXPECT_TRUE(code == ExitCode::answered || code == ExitCode::wrong_usage) << option;
  }
}

TEST(ResharpenCommand, FitsItsWidthAndStaysInsideAsciiWhereTheTerminalDoes) {
  const Words all = {"--micro-bevel=20deg-per-side", "--cuts=200", "--dress-every=30"};
  for (const int width : {60, 80, 100, 120}) {
    EXPECT_LE(widest_line(text_of(all, {.width = width})), width);
  }
  const std::string plain = text_of(all, {.width = 80, .unicode = false});
  EXPECT_THAT(plain, Not(HasSubstr("?")));
  EXPECT_TRUE(
      std::ranges::all_of(plain, [](char c) { return static_cast<unsigned char>(c) < 0x80; }));
}

}  // namespace
}  // namespace keenfall::cli
