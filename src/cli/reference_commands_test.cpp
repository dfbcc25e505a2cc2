#include "cli/reference_commands.h"

#include "cli/widest_line.h"
#include "materials/steels.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>

namespace keenfall::cli {
namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

constexpr Look kWide = {.width = 100};

bool is_ascii(const std::string& text) {
  return std::ranges::all_of(text, [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

std::string converted(std::string_view quantity, std::string_view unit) {
  return convert_command(quantity, unit, kWide).value();
}

std::string first_line(const std::string& text) { return text.substr(0, text.find('\n')); }

TEST(SteelsCommand, ListsEverySteelWithAllColumnsInAHundred) {
  const std::string text = steels_command("", kWide).value();

  for (const auto& steel : materials::known_steels()) {
    EXPECT_THAT(text, HasSubstr(std::string(steel.name)));
  }
  EXPECT_LE(widest_line(text), 100);
  EXPECT_THAT(text, Not(HasSubstr("Left out")));
}

TEST(SteelsCommand, NamesTheColumnsThatANarrowTerminalLosesAndStaysInside) {
  const std::string text = steels_command("", Look{.width = 60}).value();

  EXPECT_THAT(text, HasSubstr("Left out here for want of width: "));
  EXPECT_LE(widest_line(text), 60);
}

// EN 10088 as printed in Llewellyn and Hudd: C 0.85 to 0.95, Cr 17 to 19.
TEST(SteelsCommand, ShowsOneSteelWithMarksAndSources) {
  const std::string text = steels_command("EN 1.4112", kWide).value();

  EXPECT_THAT(text,
              AllOf(HasSubstr("X90CrMoV18, also 1.4112"),
                    HasSubstr("C                 0.85   0.95  wt-%  seen    llewellyn-hudd"),
                    HasSubstr("hardness in use     56     60  HRC   memory  trade-memory"),
                    HasSubstr("llewellyn-hudd: D. T. Llewellyn"),
                    HasSubstr("no recommendation")));
  EXPECT_LE(widest_line(text), 100);
}

// Gomes et al. 1995, abstract: 10 to 17 MPa root m for high-speed steels made from powder.
TEST(SteelsCommand, ShowsWhatModelsTakeASteelForWithMarksAndSources) {
  const std::string text = steels_command("A11", kWide).value();

  EXPECT_THAT(text,
              AllOf(HasSubstr("at 62 HRC"),
                    testing::ContainsRegex("toughness K_Ic +14 +10 +17 +MPa .* seen +gomes1995"),
                    testing::ContainsRegex("matrix +680 +640 +720 +HV +guess +plausible"),
                    HasSubstr("gomes1995: Gomes, Wronski and Wright 1995")));
  EXPECT_LE(widest_line(text), 100);
  EXPECT_THAT(steels_command("X46Cr13", kWide).value(), Not(HasSubstr("models of wear")));
}

TEST(SteelsCommand, SaysWhereAModelsRowIsOfAnotherHardnessThanTheUsual) {
  EXPECT_THAT(steels_command("75Ni8", kWide).value(),
              HasSubstr("This row is at 54 HRC, softer than the 57 to 62 HRC at which 75Ni8 is"));
  EXPECT_THAT(steels_command("A11", kWide).value(), Not(HasSubstr("This row is at")));
}

TEST(SteelsCommand, SaysWhenASteelIsOnlyNear) {
  EXPECT_THAT(first_line(steels_command("1.2510", kWide).value()),
              HasSubstr("AISI O1 comes near it, with limits of its own"));
}

TEST(SteelsCommand, RefusesASteelItDoesNotKnow) {
  const auto refused = steels_command("X90CrMoV81", kWide);

  ASSERT_FALSE(refused.has_value());
  EXPECT_EQ(refused.error().accepted, "did you mean X90CrMoV18");
}

TEST(GritsCommand, PutsTheSystemsSideBySide) {
  const std::string text = grits_command("", kWide).value();

  EXPECT_THAT(text, HasSubstr("1000        4.5 m       18.3 s    11.5 s     10.3 s"));
  EXPECT_LE(widest_line(text), 100);
}

// JIS R 6001:1987: #1000 is 11.5 um, plus or minus 1.0.
TEST(GritsCommand, ShowsOneSystemWithItsSources) {
  EXPECT_THAT(
      grits_command("jis", kWide).value(),
      AllOf(HasSubstr("1000       11.5  1.0  seen  jis-r6001-1987"), HasSubstr("JIS R 6001:1987")));
}

TEST(GritsCommand, ShowsOneGritAndItsNeighbours) {
  EXPECT_THAT(grits_command("F1000", kWide).value(),
              AllOf(HasSubstr("FEPA-F 1000 has a median grain of 4.5 µm (memory, fepa-42-memory)."),
                    HasSubstr("JIS           3000        4.0            0.89  seen"),
                    HasSubstr("none near")));
}

TEST(GritsCommand, ListsWhatABareNumberCouldBe) {
  EXPECT_THAT(grits_command("1000", kWide).value(),
              AllOf(HasSubstr("“1000” does not say its system"),
                    HasSubstr("FEPA-F 1000        4.5"),
                    HasSubstr("FEPA-P 1000       18.3"),
                    HasSubstr("JIS 1000          11.5")));
}

TEST(GritsCommand, RefusesAGradeWord) {
  const auto refused = grits_command("extra fine", kWide);

  ASSERT_FALSE(refused.has_value());
  EXPECT_THAT(refused.error().sentence, HasSubstr("does not say in which system"));
}

// NIST SP 811: 1 kgf = 9.80665 N; ASTM E140: 61 HRC = 720 HV; geometry: twice 17 is 34.
TEST(ConvertCommand, AnswersInOneLine) {
  EXPECT_EQ(converted("400gf", "N"), "400 gf = 3.92266 N\n");
  EXPECT_EQ(first_line(converted("61HRC", "HV")), "61 HRC is about 720 HV");
  EXPECT_EQ(converted("17deg-per-side", "inclusive"), "17° per side = 34° inclusive\n");
  EXPECT_EQ(converted("0.3mm", "um"), "0.3 mm = 300 µm\n");
}

TEST(ConvertCommand, ShowsMarkAndSourceOfEveryGrit) {
  EXPECT_EQ(first_line(converted("F1000", "JIS")),
            "FEPA-F 1000 (4.5 µm, memory, fepa-42-memory) is about JIS 3000 (4.0 µm, seen, "
            "jis-r6001-1987)");
}

TEST(ConvertCommand, RoundsConvertedHardnessToWhatItIsWorth) {
  EXPECT_EQ(first_line(converted("705HV", "HRC")), "705 HV is about 60 HRC");
}

TEST(ConvertCommand, RefusesANumberWithoutAUnit) {
  const auto refused = convert_command("400", "N", kWide);

  ASSERT_FALSE(refused.has_value());
  EXPECT_EQ(refused.error().sentence, "“400” has no unit");
}

TEST(ConvertCommand, NeverConvertsABareGritNumber) {
  for (const char* bare : {"1000", "#1000", "fine"}) {
    const auto refused = convert_command(bare, "JIS", kWide);
    ASSERT_FALSE(refused.has_value()) << bare;
    EXPECT_THAT(refused.error().sentence, HasSubstr("does not say in which system")) << bare;
  }
}

TEST(ReferenceCommands, StayInsideAsciiWhereTheTerminalDoes) {
  const Look plain = {.width = 100, .unicode = false};

  EXPECT_TRUE(is_ascii(steels_command("", plain).value()));
  EXPECT_TRUE(is_ascii(steels_command("D2", plain).value()));
  EXPECT_TRUE(is_ascii(grits_command("", plain).value()));
  EXPECT_TRUE(is_ascii(grits_command("1000", plain).value()));
  EXPECT_TRUE(is_ascii(convert_command("9um", "FEPA-F", plain).value()));
}

}  // namespace
}  // namespace keenfall::cli
