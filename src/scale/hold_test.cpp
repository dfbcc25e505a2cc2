#include "scale/hold.h"

#include "base/plain_number.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstddef>
#include <string>
#include <vector>

namespace keenfall::scale {
namespace {

using ::testing::DoubleNear;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

constexpr HoldAsked kPeak = {};
constexpr HoldAsked kStable = {.kind = HoldKind::stable};

Hold armed(const HoldAsked& asked) { return Hold::armed(asked).value(); }

// Lines, ten a second.
void feed(Hold& hold, const std::vector<std::string>& lines, double from_s = 0) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    hold.take(from_s + static_cast<double>(i) / 10, reading_of_line(lines[i]).value());
  }
}

std::vector<std::string> grams(const std::vector<double>& values) {
  std::vector<std::string> lines;
  for (const double value : values) lines.push_back(base::with_decimals(value, 1) + " g");
  return lines;
}

const std::vector<double> kGoodPress = {
    0, 0, 0, 20, 40, 60, 80, 100, 120, 140, 160, 180, 200, 210, 0, 0};

TEST(Hold, OfAPressKeepsNumberUnitLineAndCount) {
  Hold hold = armed(kPeak);
  feed(hold, grams(kGoodPress));

  const HeldReading held = hold.held().value();
  EXPECT_EQ(held.kind, HoldKind::peak);
  EXPECT_EQ(held.number, 210);
  EXPECT_EQ(held.unit, "g");
  EXPECT_EQ(held.line, "210.0 g");
  EXPECT_EQ(held.samples, 6U);  // above 105
  EXPECT_THAT(held.note, IsEmpty());
  EXPECT_EQ(hold.stage(), PressStage::held);
}

TEST(Hold, OfAValueThatSettlesKeepsTheSame) {
  Hold hold = armed(kStable);
  feed(hold, {"ST,GS,+ 0.0 g", "US,GS,+ 80.1 g", "US,GS,+ 104.0 g", "ST,GS,+ 104.2 g"});

  const HeldReading held = hold.held().value();
  EXPECT_EQ(held.kind, HoldKind::stable);
  EXPECT_EQ(held.number, 104.2);
  EXPECT_EQ(held.line, "ST,GS,+ 104.2 g");
  EXPECT_EQ(held.samples, 1U);
  EXPECT_FALSE(held.peak);
}

TEST(Hold, SaysHowLowAFastPressReads) {
  Hold hold = armed(kPeak);
  feed(hold, grams({0, 0, 0, 60, 140, 220, 0}));

  // 80 g each tenth of a second: 800 g a second, of which half a tenth is 40 g.
  EXPECT_THAT(
      hold.held().value().note,
      HasSubstr("reads about 40 g low on average: a value came every 0.10 s while the press "
                "rose by 800 g a second"));
}

TEST(Hold, SaysWhereTheScaleDidNotStandAtZero) {
  Hold hold = armed(kPeak);
  std::vector<double> values = kGoodPress;
  for (double& value : values) value += 12;
  feed(hold, grams(values));

  EXPECT_EQ(hold.held().value().number, 222);
  EXPECT_THAT(hold.held().value().note, HasSubstr("stood at 12.0 g before the press"));
}

// 5 gf is 0.049 N; 3 % of 400 gf is 12 gf.
TEST(Hold, APressBeginsAboveATouch) {
  EXPECT_THAT(begins_above(kPeak, "g", 1), DoubleNear(5, 1e-9));
  EXPECT_THAT(begins_above(kPeak, "N", 3), DoubleNear(0.04903325, 1e-9));
  EXPECT_THAT(begins_above({.full_press = materials::Quantity{400, "gf"}}, "g", 1),
              DoubleNear(12, 1e-9));
  EXPECT_THAT(begins_above({.full_press = materials::Quantity{1, "N"}}, "gf", 1),
              DoubleNear(5, 1e-9));
  EXPECT_THAT(begins_above(kPeak, "kg", 2), DoubleNear(0.02, 1e-9));  // two steps of 10 g
}

TEST(Hold, AFullPressIsAForceAboveZero) {
  EXPECT_THAT(Hold::armed({.full_press = materials::Quantity{0, "gf"}}).error().sentence,
              HasSubstr("above 0"));
  EXPECT_FALSE(Hold::armed({.full_press = materials::Quantity{5, "mm"}}));
  EXPECT_TRUE(Hold::armed({.full_press = materials::Quantity{5, "N"}}));
}

TEST(Hold, AnOverloadSpoilsThePressAndAnotherOneCounts) {
  Hold hold = armed(kPeak);
  feed(hold, {"0.0 g", "0.0 g", "100.0 g", "200.0 g", "OL", "250.0 g", "0.0 g"});
  EXPECT_FALSE(hold.held());
  EXPECT_THAT(hold.trouble(), HasSubstr("more than the scale can show"));

  feed(hold, grams({0, 0, 0, 0, 0, 50, 100}), 0.7);
  EXPECT_THAT(hold.trouble(), IsEmpty());

  feed(hold, grams({150, 0}), 1.4);
  EXPECT_EQ(hold.held().value().number, 150);
}

TEST(Hold, AnotherUnitBeginsAnew) {
  Hold hold = armed(kPeak);
  feed(hold, {"0.0 g", "0.0 g", "100.0 g", "0.200 kg", "0.000 kg"});

  EXPECT_FALSE(hold.held());
  EXPECT_THAT(hold.trouble(), HasSubstr("changed its unit"));
}

TEST(Hold, AScaleThatIsLostSpoilsThePress) {
  Hold hold = armed(kPeak);
  feed(hold, {"0.0 g", "0.0 g", "100.0 g"});
  hold.break_off();

  EXPECT_EQ(hold.stage(), PressStage::waiting);
  EXPECT_THAT(hold.trouble(), HasSubstr("lost during the press"));
}

TEST(Hold, APressThatIsNotHeardToItsEndIsSaid) {
  Hold hold = armed(kPeak);
  feed(hold, grams({0, 0, 100}));
  feed(hold, grams({0}), 5);

  EXPECT_THAT(hold.trouble(), HasSubstr("not heard to its end"));
}

TEST(Hold, TellsTheHighestOfThePressThatGoesOn) {
  Hold hold = armed(kPeak);
  feed(hold, grams({0, 0, 100, 90}));

  EXPECT_EQ(hold.stage(), PressStage::pressing);
  EXPECT_EQ(hold.highest(), 100);
}

TEST(Hold, WhatIsHeldStaysWhateverComes) {
  Hold hold = armed(kPeak);
  feed(hold, grams(kGoodPress));
  feed(hold, {"500.0 g", "OL", "1.000 kg"}, 2);
  hold.break_off();

  EXPECT_EQ(hold.held().value().number, 210);
}

}  // namespace
}  // namespace keenfall::scale
