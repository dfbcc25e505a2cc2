#include "materials/units.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

namespace keenfall::materials {
namespace {

using testing::HasSubstr;

double converted_to(double number, std::string_view from, std::string_view to) {
  return convert(number, from, to).value();
}

// NIST SP 811 (2008), Appendix B.8: the factors printed there.
TEST(Units, OfForceFollowTheNistFactors) {
  EXPECT_DOUBLE_EQ(converted_to(1, "kgf", "N"), 9.80665);
  EXPECT_DOUBLE_EQ(converted_to(1, "lbf", "N"), 4.4482216152605);
  EXPECT_DOUBLE_EQ(converted_to(1, "gf", "N"), 9.80665e-3);
  EXPECT_NEAR(converted_to(1, "ozf", "N"), 2.780139e-1, 5e-8);
  EXPECT_DOUBLE_EQ(converted_to(400, "gf", "N"), 3.92266);
}

// NIST SP 811 (2008), Appendix B.8; the inch and the foot are exact.
TEST(Units, OfLengthFollowTheNistFactors) {
  EXPECT_DOUBLE_EQ(converted_to(1, "in", "mm"), 25.4);
  EXPECT_DOUBLE_EQ(converted_to(1, "ft", "m"), 0.3048);
  EXPECT_DOUBLE_EQ(converted_to(0.3, "mm", "\u00b5m"), 300);
}

// NIST SP 811 (2008), Appendix B.8.
TEST(Units, OfMassFollowTheNistFactors) {
  EXPECT_DOUBLE_EQ(converted_to(1, "lb", "kg"), 0.45359237);
  EXPECT_NEAR(converted_to(1, "oz", "g"), 28.34952, 5e-6);
}

TEST(Units, OfMassBecomeForcesAsAScaleShowsThemAndSaySo) {
  const auto weighed = conversion(400, "g", "gf");

  ASSERT_TRUE(weighed.has_value());
  EXPECT_DOUBLE_EQ(weighed->number, 400);
  EXPECT_THAT(weighed->note, HasSubstr("standard gravity"));
  EXPECT_DOUBLE_EQ(converted_to(1, "lbf", "lb"), 1);
  EXPECT_FALSE(same_dimension("g", "gf"));
}

// A 17 degree edge measures 34 degrees across (geometry).
TEST(Units, OfAngleTellPerSideFromInclusive) {
  EXPECT_DOUBLE_EQ(converted_to(17, "deg-per-side", "inclusive"), 34);
  EXPECT_DOUBLE_EQ(converted_to(34, "deg-inclusive", "deg per side"), 17);
}

TEST(Units, OfAngleRefuseWhatNoEdgeCanHave) {
  EXPECT_FALSE(convert(90, "deg-per-side", "deg-inclusive").has_value());
  EXPECT_FALSE(convert(0, "deg-inclusive", "deg-per-side").has_value());
  EXPECT_TRUE(convert(179, "deg-inclusive", "deg-per-side").has_value());
}

TEST(Units, RefuseABareDegreeBecauseItSaysNeither) {
  const auto bare = convert(17, "deg", "deg-inclusive");

  ASSERT_FALSE(bare.has_value());
  EXPECT_THAT(bare.error().accepted, HasSubstr("a bare degree says neither"));
}

TEST(Units, OfTimeAreSixties) {
  EXPECT_DOUBLE_EQ(converted_to(1.5, "h", "min"), 90);
  EXPECT_DOUBLE_EQ(converted_to(2, "minutes", "s"), 120);
}

// ASTM E140: 61 HRC is 720 HV.
TEST(Units, OfHardnessConvertApproximatelyAndSaySo) {
  const auto hardness = conversion(61, "HRC", "HV");

  ASSERT_TRUE(hardness.has_value());
  EXPECT_DOUBLE_EQ(hardness->number, 720);
  EXPECT_TRUE(hardness->approximate);
  EXPECT_THAT(hardness->note, HasSubstr("ASTM E140"));
}

// JIS R 6001:1987: 1000 is 11.5 um; F1000 (4.5 um) comes nearest to JIS 3000 (4.0 um).
TEST(Units, OfGritConvertThroughTheMedianSize) {
  EXPECT_DOUBLE_EQ(converted_to(1000, "JIS", "um"), 11.5);
  EXPECT_DOUBLE_EQ(converted_to(1000, "FEPA-F", "JIS"), 3000);
  EXPECT_DOUBLE_EQ(converted_to(9.3, "um", "F"), 600);
  EXPECT_NEAR(converted_to(0.3, "mm", "FEPA-P"), 60, 1e-9);
}

TEST(Units, AreFoundHoweverTheyAreSpelled) {
  for (const char* spelled : {"N", "n", " Newton ", "newtons"}) {
    ASSERT_NE(find_unit(spelled), nullptr) << spelled;
    EXPECT_EQ(find_unit(spelled)->name, "N");
  }
  EXPECT_EQ(find_unit("grams-force")->name, "gf");
  EXPECT_EQ(find_unit("° per side")->name, "deg-per-side");
  EXPECT_EQ(find_unit("furlong"), nullptr);
  EXPECT_EQ(find_unit(""), nullptr);
}

TEST(Units, DoNotTakeTheMeganewtonForAMillinewton) { EXPECT_EQ(find_unit("MN"), nullptr); }

TEST(Units, HaveOneDimensionEach) {
  EXPECT_TRUE(same_dimension("gf", "N"));
  EXPECT_TRUE(same_dimension("mm", "in"));
  EXPECT_FALSE(same_dimension("mm", "N"));
  EXPECT_TRUE(same_dimension("chips", "Chips"));
  EXPECT_FALSE(same_dimension("chips", "rungs"));
  EXPECT_FALSE(same_dimension("", ""));
}

TEST(Units, NobodyKnowsConvertOnlyToThemselves) {
  EXPECT_DOUBLE_EQ(converted_to(40, "%", "%"), 40);
  EXPECT_FALSE(convert(40, "%", "chips").has_value());
}

TEST(Units, OfDifferentDimensionsAreRefusedInWords) {
  const auto mixed = convert(1, "mm", "N");

  ASSERT_FALSE(mixed.has_value());
  EXPECT_EQ(mixed.error().kind, base::ProblemKind::conflicting);
  EXPECT_EQ(mixed.error().sentence,
            "mm is the unit of a length and N of a force; one cannot be turned into the other");
  EXPECT_THAT(mixed.error().accepted, HasSubstr("mm"));
  EXPECT_THAT(mixed.error().accepted, ::testing::Not(HasSubstr("gf")));
}

TEST(Units, ThatAreMisspelledAreAnsweredWithTheNearest) {
  const auto wrong = convert(1, "gff", "N");

  ASSERT_FALSE(wrong.has_value());
  EXPECT_EQ(wrong.error().kind, base::ProblemKind::unknown_name);
  EXPECT_EQ(wrong.error().sentence, "the unit “gff” is not known");
  EXPECT_EQ(convert(1, " ", "N").error().sentence, "no unit is said");
  EXPECT_THAT(wrong.error().accepted, HasSubstr("did you mean gf"));
}

TEST(Units, RefuseNumbersThatAreNotFiniteOrOutgrowTheUnit) {
  EXPECT_FALSE(convert(std::numeric_limits<double>::infinity(), "N", "gf").has_value());
  EXPECT_FALSE(convert(std::nan(""), "N", "gf").has_value());
  EXPECT_FALSE(convert(1e308, "m", "um").has_value());
}

RC_GTEST_PROP(Units, ReturnToTheSameNumberThereAndBack, ()) {
  std::vector<Unit> plain;
  for (const Unit& unit : known_units()) {
    if (unit.dimension != Dimension::hardness && unit.dimension != Dimension::grit) {
      plain.push_back(unit);
    }
  }
  const Unit from = *rc::gen::elementOf(plain);
  const Unit to = *rc::gen::elementOf(plain);
  const double number = *rc::gen::inRange(1, 89000) / 1000.0;
  const auto there = convert(number, from.name, to.name);
  RC_PRE(there.has_value());

  const double back = convert(*there, to.name, from.name).value();

  RC_ASSERT(std::abs(back - number) <= 1e-12 * number);
}

}  // namespace
}  // namespace keenfall::materials
