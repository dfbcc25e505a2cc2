#include "scale/stable_hold.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstddef>
#include <limits>
#include <stdexcept>
#include <vector>

namespace keenfall::scale {
namespace {

using enum Stability;

constexpr StableRules kTenths = {.above = 0.3, .tolerance = 0.1};

struct Said {
  double value = 0;
  Stability stability = not_said;
};

// Four a second.
StableHold settled(const std::vector<Said>& said, const StableRules& rules = kTenths) {
  StableHold hold(rules);
  for (std::size_t i = 0; i < said.size(); ++i) {
    hold.take({.at_s = static_cast<double>(i) / 4, .value = said[i].value}, said[i].stability);
  }
  return hold;
}

TEST(StableHold, TakesWhatTheScaleCallsStable) {
  const auto held =
      settled({{90, unstable}, {104, unstable}, {104.2, stable}, {104.3, stable}}).held();

  ASSERT_TRUE(held);
  EXPECT_EQ(held->value.value, 104.2);
  EXPECT_TRUE(held->is_said_stable);
}

TEST(StableHold, AnEmptyScaleIsNoReadingHoweverStable) {
  EXPECT_FALSE(settled({{0, stable}, {0.2, stable}, {-0.3, stable}, {-12, stable}}).held());
}

TEST(StableHold, WhereNothingIsSaidValuesThatStayTogetherAreStable) {
  const auto held =
      settled({{0}, {60}, {104.3}, {104.2}, {104.3}, {104.3}, {104.2}, {104.3}}).held();

  ASSERT_TRUE(held);
  EXPECT_EQ(held->value.value, 104.2);
  EXPECT_EQ(held->value.at_s, 1.5);  // a second after the first of them
  EXPECT_EQ(held->samples, 5U);
  EXPECT_FALSE(held->is_said_stable);
}

TEST(StableHold, WhatMovesByMoreThanTheToleranceIsNotStable) {
  std::vector<Said> creeping;
  for (int i = 0; i < 100; ++i) creeping.push_back({100 + i * 0.05});

  EXPECT_FALSE(settled(creeping).held());
}

TEST(StableHold, WhatIsCalledUnstableIsNeverStable) {
  EXPECT_FALSE(settled(std::vector<Said>(100, {104.2, unstable})).held());
}

TEST(StableHold, AnUnstableValueBeginsTheRowAnew) {
  const auto held = settled({{104.2}, {104.2}, {104.2}, {104.2}, {104.2, unstable}, {104.2}});

  EXPECT_FALSE(held.held());
}

TEST(StableHold, APauseBeginsTheRowAnew) {
  StableHold hold(kTenths);
  for (int i = 0; i < 10; ++i) hold.take({.at_s = i * 3.0, .value = 104.2}, not_said);

  EXPECT_FALSE(hold.held());
}

TEST(StableHold, ManyValuesAtOnceAreNotStable) {
  StableHold hold(kTenths);
  for (int i = 0; i < 5000; ++i) hold.take({.at_s = 1, .value = 104.2}, not_said);

  EXPECT_FALSE(hold.held());
}

TEST(StableHold, StartedOverItForgetsTheRow) {
  StableHold hold(kTenths);
  for (int i = 0; i < 5; ++i) hold.take({.at_s = i * 0.2, .value = 104.2}, not_said);
  hold.start_over();
  hold.take({.at_s = 1, .value = 104.2}, not_said);

  EXPECT_FALSE(hold.held());
}

TEST(StableHold, WhatIsHeldStays) {
  const auto held = settled({{104.2, stable}, {200, stable}}).held();

  EXPECT_EQ(held->value.value, 104.2);
}

TEST(StableHold, ValuesThatAreNoNumbersSayNothing) {
  EXPECT_FALSE(settled({{std::numeric_limits<double>::infinity(), stable}}).held());
}

TEST(StableHold, RulesThatTellNothingAreAFault) {
  EXPECT_THROW(StableHold({.tolerance = -1}), std::logic_error);
  EXPECT_THROW(StableHold({.values = 1}), std::logic_error);
}

}  // namespace
}  // namespace keenfall::scale
