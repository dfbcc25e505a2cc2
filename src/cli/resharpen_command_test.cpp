#include "cli/asked_resharpening_test.h"
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
  EXPECT_THAT(text, HasSubstr("the middle 90 % of 400 draws"));
  EXPECT_THAT(text, HasSubstr("later is cheaper as far as 800 cuts were looked at ("));
  EXPECT_THAT(text,
              testing::ContainsRegex(
                  "In [0-9]+ % of the draws it is cheaper sooner, down to every [0-9]+"));
  EXPECT_THAT(text_of({}), Not(HasSubstr("costs least")));
}

TEST(ResharpenCommand, SaysOfSlowWearThatTheLaterIsTheCheaperWhateverTheStone) {
  const std::string text = as_one_line(resharpen({"--steel=1.2379",
                                                  "--angle=17",
                                                  "--thickness=300um",
                                                  "--land=3um",
                                                  "--primary-angle=0",
                                                  "--stone=diamond",
                                                  "--cuts=200"})
                                           .out);

  EXPECT_THAT(text, HasSubstr("later is cheaper as far as 800 cuts were looked at ("));
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
  EXPECT_THAT(refusal("--micro-bevel=20mm"), HasSubstr("--micro-bevel: mm is the unit of"));
  EXPECT_THAT(refusal("--micro-bevel=10deg-per-side"), HasSubstr("a micro-bevel must be steeper"));
  EXPECT_THAT(refusal("--primary-angle=20deg-per-side"), HasSubstr("--primary-angle: the faces"));
  EXPECT_THAT(refusal("--stone=cheese"), HasSubstr("--stone: there is no stone of “cheese”"));
  EXPECT_THAT(refusal("--dress-every=0"), HasSubstr("--dress-every: dressing after 0 passes"));
  EXPECT_THAT(refusal("--seed=x"), HasSubstr("--seed must be a whole number, not \"x\"."));
  EXPECT_THAT(refusal("--setup=3min"), HasSubstr("--cuts is missing"));
  EXPECT_THAT(refusal("D2"), HasSubstr("stands alone"));
  EXPECT_THAT(resharpen({"--steel=unobtainium"}).err, HasSubstr("--steel: the steel"));
}

TEST(ResharpenCommand, TakesAnglesAsEveryCommandDoes) {
  for (const char* angle : {"--angle=17", "--angle=17,0deg", "--angle=17°"}) {
    EXPECT_EQ(
        resharpen({"--steel=1.2379", angle, "--thickness=300um", "--land=3um", "--chip=12um"}).out,
        resharpen(an_edge()).out)
        << angle;
  }
}

// X153CrMoV12 by E140: 660 * 697/720 at 60 HRC.
TEST(ResharpenCommand, TakesASteelAtAnotherHardness) {
  const auto at = [](const std::string& steel) {
    return resharpen({"--steel=" + steel, "--angle=17", "--thickness=0.3mm", "--chip=12um"}).out;
  };

  EXPECT_THAT(at("1.2379 60 HRC"), HasSubstr("X153CrMoV12 (60 HRC)"));
  EXPECT_NE(at("1.2379 58HRC").substr(0, 300), at("1.2379").substr(0, 300));
  EXPECT_THAT(resharpen(an_edge({"--steel=C75S 50HRC"})).err, HasSubstr("more than once"));
}

TEST(ResharpenCommand, TellsAllThatIsWrongAtOnce) {
  const std::string told = resharpen({"--steel=C75S 50HRC",
                                      "--angle=100",
                                      "--primary-angle=x",
                                      "--thickness=-1mm",
                                      "--chip=3parsec",
                                      "--stone=cheese",
                                      "--force=0N",
                                      "--setup=1min",
                                      "--stroek=1"})
                               .err;

  for (const char* part : {"--stroek",
                           "--steel: C75S is known at 58 HRC",
                           "--angle: a bevel angle of 100° per side",
                           "--primary-angle must be an angle, not",
                           "--thickness: a thickness behind the edge of -1 mm",
                           "--chip: the unit “parsec” is not known",
                           "--stone: there is no stone of “cheese”",
                           "--force: a force of 0 N",
                           "--cuts is missing"}) {
    EXPECT_THAT(told, HasSubstr(part));
  }
  EXPECT_EQ(std::ranges::count(told, '\n'), 10);
}

// What hangs on an option that could not be read is not said to be wrong too.
TEST(ResharpenCommand, SaysNothingOfWhatHangsOnAnOptionThatIsWrong) {
  const std::string told = resharpen({"--steel=C75S",
                                      "--angle=x",
                                      "--primary-angle=20",
                                      "--micro-bevel=5",
                                      "--thickness=0.3mm",
                                      "--chip=3um",
                                      "--stone=alumina",
                                      "--edge=1",
                                      "--counted-passes=20",
                                      "--counted-height=4um"})
                               .err;

  EXPECT_THAT(told, AllOf(HasSubstr("--angle must"), HasSubstr("--edge: ")));
  EXPECT_EQ(std::ranges::count(told, '\n'), 3) << told;
}

// The low end of a rate gives the many passes: ranges stand low to high, and a word says which.
TEST(ResharpenCommand, PutsTheFewestPassesFirstAndSaysWhichEndGivesTheMost) {
  EXPECT_THAT(text_of({"--stone=diamond"}),
              testing::ContainsRegex("0\\.0007 to 0\\.007 mm³/\\(N m\\) +22 to 220 +lowest"));
  EXPECT_THAT(text_of({}), HasSubstr("most where it is"));
  EXPECT_THAT(text_of({}, {.width = 80}), Not(HasSubstr("…")));
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
