#include "materials/hardness.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace keenfall::materials {
namespace {

using testing::HasSubstr;

// ASTM E140 Table 1 as reprinted on three pages (source key astm-e140).
TEST(Hardness, SixtyRockwellCIsSixHundredNinetySevenVickers) {
  EXPECT_DOUBLE_EQ(vickers_from_rockwell_c(60).value(), 697);
  EXPECT_DOUBLE_EQ(rockwell_c_from_vickers(697).value(), 60);
}

// The demo's three blades: E140 rows 58 -> 653 and 59 -> 674, 61 -> 720; 58.5 lies between.
TEST(Hardness, IsLinearBetweenTheRowsOfTheTable) {
  EXPECT_DOUBLE_EQ(vickers_from_rockwell_c(58.5).value(), (653 + 674) / 2.0);
  EXPECT_DOUBLE_EQ(vickers_from_rockwell_c(61).value(), 720);
}

// ISO 18265, recalled: 700 HV is 60.1, 800 is 64.0 and 900 is 67.0 HRC; within 0.2 of E140.
TEST(Hardness, AgreesWithTheOtherStandardWithinAFifthOfARockwellPoint) {
  EXPECT_NEAR(rockwell_c_from_vickers(700).value(), 60.1, 0.2);
  EXPECT_NEAR(rockwell_c_from_vickers(800).value(), 64.0, 0.2);
  EXPECT_NEAR(rockwell_c_from_vickers(900).value(), 67.0, 0.2);
}

// Recalled rows of E140 that this table leaves out: 42 -> 412, 47 -> 471, 49 -> 498.
TEST(Hardness, InterpolatesWithinTwoVickersOfTheRowsLeftOut) {
  EXPECT_NEAR(vickers_from_rockwell_c(42).value(), 412, 2);
  EXPECT_NEAR(vickers_from_rockwell_c(47).value(), 471, 2);
  EXPECT_NEAR(vickers_from_rockwell_c(49).value(), 498, 2);
}

TEST(Hardness, RisesFromRowToRowInBothScales) {
  const auto rows = known_hardness_pairs();
  for (std::size_t i = 1; i < rows.size(); ++i) {
    EXPECT_LT(rows[i - 1].hrc, rows[i].hrc);
    EXPECT_LT(rows[i - 1].hv, rows[i].hv);
  }
}

TEST(Hardness, ReachesExactlyToTheEndsOfTheTable) {
  EXPECT_DOUBLE_EQ(vickers_from_rockwell_c(40).value(), 392);
  EXPECT_DOUBLE_EQ(vickers_from_rockwell_c(68).value(), 940);
  EXPECT_DOUBLE_EQ(rockwell_c_from_vickers(392).value(), 40);
  EXPECT_DOUBLE_EQ(rockwell_c_from_vickers(940).value(), 68);
}

TEST(Hardness, IsRefusedOutsideTheTable) {
  const auto soft = vickers_from_rockwell_c(39.9);
  ASSERT_FALSE(soft.has_value());
  EXPECT_THAT(soft.error().sentence, HasSubstr("39.9 HRC is outside the conversion table"));
  EXPECT_EQ(soft.error().accepted, "40 to 68 HRC");
  EXPECT_FALSE(rockwell_c_from_vickers(941).has_value());
  EXPECT_FALSE(rockwell_c_from_vickers(std::numeric_limits<double>::quiet_NaN()).has_value());
}

RC_GTEST_PROP(Hardness, ReturnsFromVickersToTheSameRockwell, ()) {
  const double hrc = *rc::gen::inRange(4000, 6801) / 100.0;

  const double back = rockwell_c_from_vickers(vickers_from_rockwell_c(hrc).value()).value();

  RC_ASSERT(std::abs(back - hrc) < 1e-9);
}

}  // namespace
}  // namespace keenfall::materials
