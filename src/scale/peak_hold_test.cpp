#include "scale/peak_hold.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>
#include <utility>
#include <vector>

namespace keenfall::scale {
namespace {

using ::testing::DoubleNear;

// A thread pushed until it parts: at rest for a second, up at a steady rate, down at once.
struct Push {
  double rest = 0;
  double height = 200;
  double rise_per_s = 100;
  double refresh_s = 0.1;
  double phase = 0.5;  // share of a refresh by which the values lie later

  [[nodiscard]] double parts_at_s() const { return 1 + height / rise_per_s; }
  [[nodiscard]] double force_at(double at_s) const {
    if (at_s < 1 || at_s > parts_at_s()) return rest;
    return rest + (at_s - 1) * rise_per_s;
  }
};

std::vector<TimedValue> values_of(const Push& push) {
  std::vector<TimedValue> values;
  for (int i = 0;; ++i) {
    const double at_s = (i + push.phase) * push.refresh_s;
    values.push_back({.at_s = at_s, .value = push.force_at(at_s)});
    if (at_s > push.parts_at_s() + 1) return values;
  }
}

PeakHold fed(const std::vector<TimedValue>& values, const PressRules& rules = {}) {
  PeakHold hold(rules);
  for (const TimedValue& value : values) hold.take(value);
  return hold;
}

std::vector<TimedValue> every_tenth(const std::vector<double>& values) {
  std::vector<TimedValue> timed;
  for (std::size_t i = 0; i < values.size(); ++i) {
    timed.push_back({.at_s = static_cast<double>(i) / 10, .value = values[i]});
  }
  return timed;
}

TEST(PeakHold, ThePeakIsTheHighestValueShown) {
  const auto held = fed(every_tenth({0, 0, 10, 80, 150, 149, 160, 20, 0})).held();

  ASSERT_TRUE(held);
  EXPECT_EQ(held->peak.value, 160);
  EXPECT_EQ(held->peak.at_s, 0.6);
  EXPECT_EQ(held->samples, 3U);  // above 80
}

// R T/2 is the expectation of what a ramp rises between the last value and its end, where the end
// lies anywhere between two values alike (arithmetic).
TEST(PeakHold, AThreadThatPartsReadsLowByHalfARefreshOnAverage) {
  for (const auto& [rise_per_s, refresh_s] : {std::pair{100.0, 0.1},
                                              std::pair{300.0, 0.1},
                                              std::pair{100.0, 0.2},
                                              std::pair{40.0, 0.5}}) {
    double missed = 0;
    double told = 0;
    constexpr int kPhases = 200;
    for (int i = 0; i < kPhases; ++i) {
      const Push push{
          .rise_per_s = rise_per_s, .refresh_s = refresh_s, .phase = (i + 0.5) / kPhases};
      const auto held = fed(values_of(push)).held();
      ASSERT_TRUE(held);
      const double low = push.height - held->peak.value;
      EXPECT_GE(low, 0);
      EXPECT_LE(low, rise_per_s * refresh_s * 1.001);
      missed += low / kPhases;
      told += held->reads_low_by / kPhases;
    }
    const double expected = rise_per_s * refresh_s / 2;
    EXPECT_THAT(missed, DoubleNear(expected, 0.02 * expected));
    EXPECT_THAT(told, DoubleNear(expected, 0.05 * expected));
  }
}

TEST(PeakHold, SaysHowFastItRoseAndHowOftenItWasShown) {
  const auto held = fed(values_of({.rise_per_s = 120, .refresh_s = 0.05})).held();

  EXPECT_THAT(held->rise_per_s.value(), DoubleNear(120, 1e-6));
  EXPECT_THAT(held->refresh_s, DoubleNear(0.05, 1e-9));
}

// Of a ramp to F with n values above its half, R T/2 is F/4n: 5 % of it with five (arithmetic).
TEST(PeakHold, IsCoarseWithFewerThanFiveValuesOnTheUpperHalf) {
  const auto many = fed(values_of({.rise_per_s = 100, .refresh_s = 0.1})).held();
  const auto few = fed(values_of({.rise_per_s = 400, .refresh_s = 0.1})).held();

  EXPECT_EQ(many->samples, 10U);
  EXPECT_FALSE(many->is_coarse);
  EXPECT_LT(few->samples, 5U);
  EXPECT_TRUE(few->is_coarse);
}

TEST(PeakHold, APressThatIsOneValueIsCoarse) {
  const auto held = fed(every_tenth({0, 0, 150, 0})).held();

  EXPECT_EQ(held->samples, 1U);
  EXPECT_TRUE(held->is_coarse);
}

TEST(PeakHold, ValuesThatAllCameAtOnceTellNoRise) {
  const auto held =
      fed({{.at_s = 1, .value = 0}, {.at_s = 1, .value = 150}, {.at_s = 1, .value = 0}}).held();

  EXPECT_FALSE(held->rise_per_s);
  EXPECT_TRUE(held->is_coarse);
}

TEST(PeakHold, ATremblingHandIsOnePress) {
  const auto held = fed(every_tenth({0, 0, 60, 100, 60, 110, 70, 140, 0, 0})).held();

  EXPECT_EQ(held->peak.value, 140);
}

TEST(PeakHold, ATouchIsNoPress) {
  EXPECT_EQ(fed(every_tenth({0, 0, 3, 5, 4, 0, 0})).stage(), PressStage::waiting);
}

TEST(PeakHold, ADriftIsNoPress) {
  PeakHold hold({.begins_above = 5});
  for (int i = 0; i < 600; ++i) hold.take({.at_s = i * 0.1, .value = i * 0.1});  // 1 a second

  EXPECT_EQ(hold.stage(), PressStage::waiting);
}

TEST(PeakHold, ThePressIsMeasuredFromWhereTheScaleRests) {
  for (const double rest : {-20.0, 0.0, 300.0}) {
    const auto held = fed(values_of({.rest = rest})).held();

    ASSERT_TRUE(held) << rest;
    EXPECT_EQ(held->rest, rest);
    EXPECT_THAT(held->peak.value, DoubleNear(rest + 195, 1e-6));
    EXPECT_EQ(held->samples, 10U);
  }
}

TEST(PeakHold, ALoadThatIsTakenOffIsNoPress) {
  EXPECT_EQ(fed(every_tenth({300, 300, 300, 120, -4, 2, 0, 0, 0})).stage(), PressStage::waiting);
}

TEST(PeakHold, APressAfterALoadWasTakenOffIsHeld) {
  const auto held = fed(every_tenth({300, 300, 120, 0, 0, 0, 0, 0, 40, 80, 90, 0})).held();

  EXPECT_EQ(held.value().peak.value, 90);
}

TEST(PeakHold, OnePressIsHeldAndTheNextIsNot) {
  const PeakHold hold = fed(every_tenth({0, 0, 80, 100, 0, 0, 0, 200, 250, 0}));

  EXPECT_EQ(hold.stage(), PressStage::held);
  EXPECT_EQ(hold.held()->peak.value, 100);
  EXPECT_EQ(hold.highest(), 100);
}

TEST(PeakHold, TellsTheHighestWhileThePressGoesOn) {
  const PeakHold hold = fed(every_tenth({0, 0, 80, 100, 90}));

  EXPECT_EQ(hold.stage(), PressStage::pressing);
  EXPECT_EQ(hold.highest(), 100);
  EXPECT_FALSE(hold.held());
}

TEST(PeakHold, APressThatWasNotHeardToItsEndIsNotHeld) {
  PeakHold hold = fed(every_tenth({0, 0, 80, 100}));
  hold.take({.at_s = 3, .value = 0});

  EXPECT_EQ(hold.stage(), PressStage::waiting);
  EXPECT_FALSE(hold.highest());
}

TEST(PeakHold, WhatStaysOnForAMinuteIsNoPress) {
  PeakHold hold({});
  hold.take({.at_s = 0, .value = 0});
  for (int i = 1; i < 700; ++i) hold.take({.at_s = i * 0.1, .value = 100});

  EXPECT_EQ(hold.stage(), PressStage::waiting);
}

TEST(PeakHold, ValuesThatAreNoNumbersSayNothing) {
  const double nan = std::numeric_limits<double>::quiet_NaN();

  EXPECT_EQ(fed(every_tenth({0, nan, 80, nan, 100, 0})).held().value().peak.value, 100);
}

TEST(PeakHold, RulesThatNoPressCanKeepAreAFault) {
  EXPECT_THROW(PeakHold({.begins_above = 0}), std::logic_error);
  EXPECT_THROW(PeakHold({.ends_below = 1}), std::logic_error);
}

TEST(PeakHold, WhateverComesWhatIsHeldWasShown) {
  EXPECT_TRUE(rc::check("any values at any times", [](const std::vector<double>& numbers) {
    PeakHold hold({});
    double at_s = 0;
    std::vector<double> shown;
    for (const double number : numbers) {
      at_s += std::abs(std::fmod(number, 3));
      shown.push_back(number);
      hold.take({.at_s = at_s, .value = number});
    }
    if (!hold.held()) return;
    RC_ASSERT(std::ranges::count(shown, hold.held()->peak.value) > 0);
    RC_ASSERT(hold.held()->samples > 0);
    RC_ASSERT(hold.held()->reads_low_by >= 0);
  }));
}

}  // namespace
}  // namespace keenfall::scale
