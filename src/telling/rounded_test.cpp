#include "telling/rounded.h"

#include <gtest/gtest.h>

namespace keenfall::telling {
namespace {

TEST(Rounded, LimitsHaveThreeFiguresWithoutAnExponent) {
  EXPECT_EQ(limits_text(7e-4, 7e-3), "0.0007 to 0.007");
  EXPECT_EQ(limits_text(1200, 1800), "1200 to 1800");
  EXPECT_EQ(limits_text(0.17754, 12345), "0.178 to 12300");
  EXPECT_EQ(limits_text(0, 60), "0 to 60");
}

TEST(Rounding, KeepsSignificantFiguresAndTheZerosThatShowThem) {
  EXPECT_EQ(to_figures(3.14159, 2), "3.1");
  EXPECT_EQ(to_figures(2, 2), "2.0");
  EXPECT_EQ(to_figures(0.9812, 2), "0.98");
  EXPECT_EQ(to_figures(9.96, 2), "10");
  EXPECT_EQ(to_figures(12345, 3), "12300");
  EXPECT_EQ(to_figures(0, 2), "0");
}

TEST(Rounding, GivesRatiosTwoFigures) {
  EXPECT_EQ(ratio_text(3.14, 1.5), "3.1");
  EXPECT_EQ(ratio_text(12.4, 1.5), "12");
}

// An interval from 1.02 lies above 1; written "1.0" it would seem to touch it.
TEST(Rounding, NeverPutsARatioOntoOneOrOntoTheMargin) {
  EXPECT_EQ(ratio_text(1.02, 1.5), "1.02");
  EXPECT_EQ(ratio_text(0.998, 1.5), "0.998");
  EXPECT_EQ(ratio_text(1.46, 1.5), "1.46");
  EXPECT_EQ(ratio_text(1.54, 1.5), "1.54");
}

TEST(Rounding, GivesTwoFiguresBelowOneWhateverTheMargin) {
  EXPECT_EQ(ratio_text(0.6671, 1.5), "0.67");
  EXPECT_EQ(ratio_text(0.6664, 1.5), "0.67");
}

TEST(Rounding, WritesExactlyOneAndExactlyTheMarginAsTheyAre) {
  EXPECT_EQ(ratio_text(1, 1.5), "1.0");
  EXPECT_EQ(ratio_text(1.5, 1.5), "1.5");
}

TEST(Rounding, NeverWritesAnExponentForARatio) {
  EXPECT_EQ(ratio_text(1e9, 1.5), "over a million");
  EXPECT_EQ(ratio_text(1e-9, 1.5), "under a millionth");
}

TEST(Rounding, GivesWholeCutsFromTenOn) {
  EXPECT_EQ(cuts_text(8.43), "8.4");
  EXPECT_EQ(cuts_text(9.97), "10");
  EXPECT_EQ(cuts_text(107.8), "108");
  EXPECT_EQ(cuts_text(999.7), "1000");
  EXPECT_EQ(cuts_text(12345), "12300");
  EXPECT_EQ(cuts_text(2.5e6), "2.5 million");
  EXPECT_EQ(cuts_text(1e6), "1.0 million");
  EXPECT_EQ(cuts_text(1e9), "over a billion");
  EXPECT_EQ(cuts_text(7e12), "over a billion");
  EXPECT_EQ(cuts_text(0), "0");
}

TEST(Rounding, CallsOnlyWhatIsLessThanAHundredthOfACutUnderIt) {
  EXPECT_EQ(cuts_text(0.0099), "under 0.01");
  EXPECT_EQ(cuts_text(0.01), "0.010");
}

TEST(Rounding, GivesTheLengthOfStockWhereTheLengthOfACutIsKnown) {
  EXPECT_EQ(stock_text(108, 100, {}), "10.8 m");
  EXPECT_EQ(stock_text(8.4, 100, {}), "0.84 m");
  EXPECT_EQ(stock_text(108, std::nullopt, {}), "");
}

// 10.8 m over 0.3048 m a foot is 35.43 (NIST SP 811 B.8).
TEST(Rounding, GivesTheLengthOfStockInFeetBesideInches) {
  EXPECT_EQ(stock_text(108, 100, {.length = "in"}), "35.4 ft");
}

// exp(0.18) = 1.197 (closed form).
TEST(Rounding, GivesALogScatterInPercent) { EXPECT_EQ(scatter_text(0.18), "20 %"); }

TEST(Rounding, NeverCallsAChanceNoneOrSure) {
  EXPECT_EQ(chance_text(0.301), "30 %");
  EXPECT_EQ(chance_text(0.0001), "under 1 %");
  EXPECT_EQ(chance_text(0.9999), "over 99 %");
}

// Two figures would put the first on the other side, four the others onto it.
TEST(Rounding, GivesARatioAsManyFiguresAsItTakesToStayOnItsSide) {
  EXPECT_EQ(ratio_text(1.242, 1.24), "1.242");
  EXPECT_EQ(ratio_text(1.00004, 1.5), "1.00004");
  EXPECT_EQ(ratio_text(0.99996, 1.5), "0.99996");
  EXPECT_EQ(ratio_text(1.500007, 1.5), "1.50001");
}

TEST(Rounding, NeverPutsAPercentageOntoAHundred) {
  EXPECT_EQ(percent_text(0.1432), "14");
  EXPECT_EQ(percent_text(0.996), "99.6");
  EXPECT_EQ(percent_text(0.9999998), "99.99998");
  EXPECT_EQ(percent_text(1.004), "100.4");
  EXPECT_EQ(percent_text(1), "100");
}

TEST(Rounding, GivesNoStockOfNoCuts) { EXPECT_EQ(stock_text(0, 100, {}), ""); }

// exp(3) - 1 = 19.1 (closed form).
TEST(Rounding, GivesNoFigureOfAScatterBeyondMeasure) { EXPECT_EQ(scatter_text(3), "over 1000 %"); }

}  // namespace
}  // namespace keenfall::telling
