#include "cli/scale_commands.h"

#include "cli/widest_line.h"
#include "materials/phases.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>
#include <string_view>

namespace keenfall::cli {
namespace {

using nlohmann::json;
using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

constexpr Look kHundred = {.width = 100};

std::string phases(std::string_view asked, const Look& look = kHundred) {
  return phases_command(asked, "0.1.0", look).value().text;
}

std::string hardness(std::string_view asked, const Look& look = kHundred) {
  return hardness_command(asked, "0.1.0", look).value().text;
}

std::string line_with(const std::string& text, const std::string& begin) {
  const std::size_t at = text.find("\n" + begin);
  if (at == std::string::npos) return "";
  return text.substr(at + 1, text.find('\n', at + 1) - at - 1);
}

// Foundry lexicon, scale of hardness: quartz 900 to 1280.
TEST(PhasesCommand, ListsEveryPhaseWithMarkAndSource) {
  const std::string text = phases("");

  for (const auto& phase : materials::known_phases()) {
    EXPECT_THAT(text, HasSubstr(std::string(phase.name)));
  }
  EXPECT_THAT(line_with(text, "quartz"),
              AllOf(HasSubstr("900   1280  seen"), HasSubstr("hardness-scale")));
  EXPECT_THAT(text, HasSubstr("hardness-scale: foundry lexicon"));
  EXPECT_LE(widest_line(text), 100);
}

TEST(PhasesCommand, NamesTheColumnsThatANarrowTerminalLosesAndStaysInside) {
  const std::string text = phases("", Look{.width = 60});

  EXPECT_THAT(text, HasSubstr("Left out here for want of width: "));
  EXPECT_LE(widest_line(text), 60);
}

// By the 1.2 rule: 900 to 1280 HV scratches 540 surely, 840 to 1100 in part, 1800 not at all.
TEST(PhasesCommand, SaysWhatAPhaseScratchesAndWhatScratchesIt) {
  const std::string text = phases("sand");

  EXPECT_THAT(text,
              HasSubstr("quartz, also sand, novaculite and silica: mineral, 900–1280 HV (seen"));
  EXPECT_THAT(line_with(text, "apatite"), HasSubstr("yes"));
  EXPECT_THAT(line_with(text, "M3C"), HasSubstr("in part"));
  EXPECT_THAT(line_with(text, "corundum"), HasSubstr("yes"));
  EXPECT_LE(widest_line(text), 100);
}

TEST(PhasesCommand, SaysSoWhereNothingScratchesAPhase) {
  EXPECT_THAT(phases("diamond"), HasSubstr("Nothing in this table scratches diamond."));
}

// Alumina (1800 to 2200 HV) cuts a matrix below 720 HV and no MC (from 2400 HV on); diamond both.
TEST(PhasesCommand, SaysWhatCutsTheMatrixAndTheCarbidesOfASteel) {
  const std::string text = phases("AISI A11");

  EXPECT_THAT(text, HasSubstr("AISI A11 at 62 HRC: a matrix of 640–720 HV (guess) with 16.5 %"));
  EXPECT_THAT(line_with(text, "fused alumina"), AllOf(HasSubstr("yes"), HasSubstr("no")));
  EXPECT_THAT(line_with(text, "diamond"), Not(HasSubstr("no")));
  EXPECT_EQ(line_with(text, "calcite"), "");
}

TEST(PhasesCommand, RefusesANameThatIsNeither) {
  const auto refused = phases_command("quarts", "0.1.0", kHundred);

  ASSERT_FALSE(refused.has_value());
  EXPECT_EQ(refused.error().accepted, "did you mean quartz");
}

TEST(PhasesCommand, SaysTheSameAsJson) {
  const json document = json::parse(phases_command("A11", "0.1.0", kHundred).value().json);

  EXPECT_EQ(document["format"], "keenfall-phases");
  ASSERT_EQ(document["asked"].size(), 2U);
  EXPECT_EQ(document["asked"][0]["name"], "matrix of AISI A11");
  EXPECT_EQ(document["asked"][1]["lo_hv"], 2400);
}

// ASTM E140: 61 HRC is 720 HV, 58 is 653; halfway from 653 to 674 is 58.5.
TEST(HardnessCommand, ConvertsOneHardnessBothWays) {
  EXPECT_THAT(hardness("61HRC"), HasSubstr("61.0 HRC is about 720 HV"));
  EXPECT_THAT(hardness("663.5 HV"), HasSubstr("58.5 HRC is about 664 HV"));
}

TEST(HardnessCommand, ListsTheRowsOfTheStandard) {
  EXPECT_THAT(hardness(""), AllOf(HasSubstr("\n 61  720\n"), HasSubstr("astm-e140: ASTM E140")));
}

TEST(HardnessCommand, RefusesANumberWithoutScaleAndOneOutsideTheTable) {
  const auto bare = hardness_command("61", "0.1.0", kHundred);
  const auto soft = hardness_command("20HRC", "0.1.0", kHundred);

  ASSERT_FALSE(bare.has_value());
  EXPECT_EQ(bare.error().accepted, "a hardness with its scale, such as 61HRC or 720HV");
  ASSERT_FALSE(soft.has_value());
  EXPECT_EQ(soft.error().accepted, "40 to 68 HRC");
}

TEST(HardnessCommand, SaysTheSameAsJson) {
  const json document = json::parse(hardness_command("61HRC", "0.1.0", kHundred).value().json);

  EXPECT_EQ(document["asked"], json({{"hrc", 61}, {"hv", 720}}));
}

TEST(ScaleCommands, StayInsideAsciiWhereTheTerminalDoes) {
  const Look plain = {.width = 80, .unicode = false};
  for (const std::string& text :
       {phases("", plain), phases("quartz", plain), phases("A11", plain), hardness("", plain)}) {
    EXPECT_TRUE(
        std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80; }));
  }
}

}  // namespace
}  // namespace keenfall::cli
