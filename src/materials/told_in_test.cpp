#include "materials/told_in.h"

#include "base/plain_number.h"
#include "materials/units.h"

#include <gtest/gtest.h>

#include <string>

namespace keenfall::materials {
namespace {

TEST(ToldIn, IsWrittenAsUnitsInAnyOrderAndSpelling) {
  const ToldIn newtons_and_inches{.force = "N", .length = "in"};

  EXPECT_EQ(told_in("N, in"), newtons_and_inches);
  EXPECT_EQ(told_in("inches,newtons"), newtons_and_inches);
  EXPECT_EQ(told_in("grams"), (ToldIn{.force = "gf"}));
  EXPECT_EQ(told_in("mm"), (ToldIn{.length = "mm"}));
  EXPECT_EQ(text_of(newtons_and_inches), "N,in");
}

TEST(ToldIn, IsAsRecordedWhereNothingIsSaid) {
  EXPECT_EQ(told_in(""), ToldIn{});
  EXPECT_EQ(told_in("as recorded"), ToldIn{});
  EXPECT_EQ(text_of(ToldIn{}), "");
}

TEST(ToldIn, RefusesWhatIsNoForceAndNoLengthAndTwoOfOne) {
  for (const char* const units : {"HRC", "stone", "cm", "N, gf", "mm, in", "N,", "deg-per-side"}) {
    const auto told = told_in(units);

    ASSERT_FALSE(told.has_value()) << units;
    EXPECT_EQ(told.error().kind, base::ProblemKind::unknown_name);
  }
  EXPECT_EQ(told_in("stone").error().sentence, "Nothing is told in “stone”.");
  EXPECT_EQ(told_in("stone").error().accepted,
            "N, mN, gf, kgf, lbf, ozf, mm or in; one of force and one of length");
}

TEST(ToldIn, TakesEveryUnitThatIsLetChoose) {
  for (const ToldChoice& force : forces_to_choose()) {
    EXPECT_EQ(told_in(force.unit), (ToldIn{.force = std::string(force.unit)}));
  }
  for (const ToldChoice& length : lengths_to_choose()) {
    EXPECT_EQ(told_in(length.unit), (ToldIn{.length = std::string(length.unit)}));
  }
}

TEST(ToldUnit, ChangesForcesAndLengthsAndNothingElse) {
  const ToldIn told{.force = "lbf", .length = "in"};

  EXPECT_EQ(told_unit("gf", told), "lbf");
  EXPECT_EQ(told_unit("mm", told), "in");
  EXPECT_EQ(told_unit("cm", told), "in");
  for (const char* const kept : {"um", "µm", "rung", "chips", "%", "s"}) {
    EXPECT_EQ(told_unit(kept, told), kept);
  }
  EXPECT_EQ(told_unit("gf", ToldIn{}), "gf");
}

// 1 gf is 9.80665e-3 N and 1 lbf 4.4482216152605 N, both exactly (NIST SP 811 B.8), an inch 25.4
// mm.
TEST(ToldNumber, HasNoMoreFiguresThanTheRecordedOneNeeds) {
  EXPECT_EQ(told_number(104, "gf", "N"), 1.02);     // 1.01989
  EXPECT_EQ(told_number(107.2, "gf", "N"), 1.051);  // 1.05127; 1.05 would be 107.1
  EXPECT_EQ(told_number(104, "gf", "lbf"), 0.229);  // 0.229281
  EXPECT_EQ(told_number(0.38, "mm", "in"), 0.015);  // 0.0149606
  EXPECT_EQ(told_number(1, "in", "mm"), 25.4);
  EXPECT_EQ(told_number(1.25, "in", "mm"), 31.8);  // 31.75
  EXPECT_EQ(told_number(104, "gf", "gf"), 104.0);
  EXPECT_EQ(told_number(0, "gf", "N"), 0.0);
}

TEST(ToldNumber, GivesTheRecordedOneBack) {
  for (int tenths = 1; tenths < 20000; tenths += 7) {
    const double recorded = tenths / 10.0;
    const double told = told_number(recorded, "gf", "N");

    const double back = convert(told, "N", "gf").value();
    const int decimals = tenths % 10 == 0 ? 0 : 1;
    EXPECT_EQ(base::with_decimals(back, decimals), base::with_decimals(recorded, decimals));
  }
}

TEST(LengthWords, SayTheLengthInItsUnit) {
  EXPECT_EQ(length_words(100, ToldIn{}), "100 mm");
  EXPECT_EQ(length_words(0.38, {.force = "N"}), "0.38 mm");
  EXPECT_EQ(length_words(100, {.length = "in"}), "3.94 in");
  EXPECT_EQ(length_words(0.38, {.length = "in"}), "0.015 in");
  EXPECT_EQ(length_words(25.4, {.length = "in"}), "1 in");
}

TEST(LongLengths, AreToldInFeetBesideInches) {
  EXPECT_EQ(long_length_unit(ToldIn{}), "m");
  EXPECT_EQ(long_length_unit({.length = "mm"}), "m");
  EXPECT_EQ(long_length_unit({.length = "in"}), "ft");
}

}  // namespace
}  // namespace keenfall::materials
