#include "cli/option_numbers.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::cli {
namespace {

using testing::HasSubstr;

TEST(OptionNumbers, TakeADecimalPointOrComma) {
  EXPECT_EQ(number_of("--pace", "17.5").value(), 17.5);
  EXPECT_EQ(number_of("--pace", "17,5").value(), 17.5);
  EXPECT_EQ(number_of("--pace", "-2e-3").value(), -2e-3);
}

TEST(OptionNumbers, RefuseACommaThatCouldMarkThousandsInSoManyWords) {
  for (const char* text : {"1,000", "12,500"}) {
    EXPECT_THAT(number_of("--pace", text).error().sentence,
                HasSubstr("could be thousands or a decimal comma"));
    EXPECT_THAT(angle_per_side_of("--angle", text).error().sentence,
                HasSubstr("could be thousands or a decimal comma"));
  }
}

TEST(OptionNumbers, RefuseWhatIsNoNumberOrMoreThanOne) {
  EXPECT_EQ(number_of("--pace", "many").error().sentence, "--pace must be a number, not \"many\".");
  EXPECT_EQ(number_of("--pace", "90mm").error().sentence,
            "--pace must be a number without a unit, not \"90mm\".");
  for (const char* text : {"", "nan", "inf", "1e999"}) EXPECT_FALSE(number_of("--pace", text));
}

TEST(OptionDraws, AreAsManyAsMakeARange) {
  EXPECT_EQ(draws_of("50").value(), 50);
  EXPECT_EQ(draws_of("49").error().sentence, "--draws must lie between 50 and 100000, not at 49.");
  EXPECT_THAT(draws_of("2").error().accepted, HasSubstr("fewer draws make no range"));
  EXPECT_FALSE(draws_of("many"));
}

TEST(OptionAngles, ArePerSideWhereNothingElseIsSaid) {
  for (const char* text :
       {"17.5", "17,5", "17.5deg", "17,5 °", "17.5deg-per-side", "35deg-inclusive"}) {
    EXPECT_DOUBLE_EQ(angle_per_side_of("--angle", text).value(), 17.5) << text;
  }
}

TEST(OptionAngles, ThatAreNoneAreRefusedWithWhatWouldDo) {
  const auto refusal = [](const char* text) { return angle_per_side_of("--angle", text).error(); };

  EXPECT_EQ(refusal("sharp").sentence, "--angle must be an angle, not \"sharp\".");
  EXPECT_THAT(refusal("sharp").accepted, HasSubstr("20deg-per-side"));
  EXPECT_THAT(refusal("20mm").sentence, HasSubstr("mm is the unit of a length"));
  EXPECT_THAT(refusal("200deg-inclusive").sentence, HasSubstr("between 0 and 90 degrees per side"));
  EXPECT_THAT(refusal("20degs").sentence, HasSubstr("the unit “degs” is not known"));
}

}  // namespace
}  // namespace keenfall::cli
