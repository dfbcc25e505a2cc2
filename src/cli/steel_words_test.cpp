#include "cli/steel_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::cli {
namespace {

using testing::HasSubstr;

SteelInWords in_words(std::string_view text) {
  return steel_in_words(workbench::apex_catalogue({}).value(), text).value();
}

base::Problem refusal(std::string_view text) {
  return steel_in_words(workbench::apex_catalogue({}).value(), text).error();
}

TEST(SteelWords, AreASteelThenHardnessAndAngleInAnyOrderAndSpacing) {
  for (const char* text : {"AISI D2 60HRC 17deg-per-side",
                           "AISI D2 60 HRC 17 deg per side",
                           "AISI D2 17deg 60HRC",
                           "AISI D2 17° 60,0 HRC",
                           "AISI D2 17 ° 60 hrc",
                           "AISI D2 34deg-inclusive 697HV"}) {
    EXPECT_EQ(in_words(text).steel.name, "AISI D2") << text;
    EXPECT_EQ(in_words(text).steel.hardness_hrc, 60) << text;
    ASSERT_TRUE(in_words(text).angle.has_value()) << text;
    EXPECT_DOUBLE_EQ(in_words(text).angle->deg, 17) << text;
  }
  EXPECT_FALSE(in_words("AISI D2").angle.has_value());
  EXPECT_EQ(in_words("AISI D2").steel.hardness_hrc, 61);
}

// Many designations are numbers themselves.
TEST(SteelWords, KeepTheNumbersOfADesignation) {
  EXPECT_EQ(in_words("SAE 1095 60 HRC").steel.name, "SAE 1095");
  EXPECT_EQ(in_words("EN 1.2379 58,5HRC").steel.hardness_hrc, 58.5);
  EXPECT_EQ(in_words("75Ni8 54 HRC").steel.name, "75Ni8");
  EXPECT_EQ(in_words("C75S (EN 1.1248) 17,5deg").angle->deg, 17.5);
}

TEST(SteelWords, SayWhatANumberWithoutItsUnitLacks) {
  EXPECT_THAT(refusal("C75S 58").sentence,
              HasSubstr("“58” after C75S has no unit and so is neither"));
  EXPECT_THAT(refusal("C75S 58").accepted, HasSubstr("C75S 58HRC"));
  EXPECT_THAT(refusal("C75S 58").accepted, HasSubstr("C75S 17deg-per-side"));
  EXPECT_THAT(refusal("AISI D2 17grad").sentence,
              HasSubstr("“17grad” after AISI D2 is neither a hardness nor an angle"));
}

TEST(SteelWords, OfAnUnknownSteelAreRefusedAsTheTableOfSteelsDoes) {
  EXPECT_EQ(refusal("unobtainium"), materials::find_microstructure("unobtainium").error());
  EXPECT_THAT(refusal("").sentence, HasSubstr("is not in the table"));
}

TEST(SteelWords, RefuseWhatIsSaidTwiceOrLiesTooFarAway) {
  EXPECT_THAT(refusal("AISI D2 60HRC 61HRC").sentence, HasSubstr("hardness is said twice"));
  EXPECT_THAT(refusal("AISI D2 50HRC").sentence, HasSubstr("to 67 HRC, not at 50 HRC"));
  EXPECT_THAT(refusal("AISI D2 200deg").sentence, HasSubstr("between 0 and 90 degrees per side"));
}

TEST(SteelWords, HaveNoAngleWhereAnOptionSaysIt) {
  const auto catalogue = workbench::apex_catalogue({}).value();

  EXPECT_EQ(steel_without_angle(catalogue, "C75S 58HRC")->hardness_hrc, 58);
  EXPECT_THAT(steel_without_angle(catalogue, "C75S 20deg").error().sentence,
              HasSubstr("an angle stands in --angle"));
  EXPECT_THAT(steel_without_angle(catalogue, "C75S 58").error().sentence,
              HasSubstr("has no unit and so is no hardness"));
}

}  // namespace
}  // namespace keenfall::cli
