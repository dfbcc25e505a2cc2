#include "sharpening/best_moment.h"

#include "sharpening/bevel_geometry.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>
#include <vector>

namespace keenfall::sharpening {
namespace {

constexpr double kSetupMinutes = 3;

// Damage h = c x and cost p h + q h^2: 1000 (s + p c x + q c^2 x^2)/x is least at sqrt(s/q)/c.
TEST(BestMoment, OfDamageThatGrowsEvenlyIsTheClosedForm) {
  const double c = 0.05;
  const double p = 0.2;
  const double q = 0.01;
  const auto minutes = [&](double cuts) { return p * c * cuts + q * c * c * cuts * cuts; };

  const BestMoment best = best_moment(kSetupMinutes, minutes, {1, 1e5});

  EXPECT_EQ(best.where, Where::inside);
  EXPECT_NEAR(best.cuts / (std::sqrt(kSetupMinutes / q) / c), 1, 1e-6);
  EXPECT_NEAR(
      best.minutes_per_1000_cuts, 1000 * (2 * std::sqrt(kSetupMinutes * q) * c + p * c), 1e-9);
}

// Damage h = c sqrt(x) and cost m h^3 = m c^3 x^1.5: least at (2 s/(m c^3))^(2/3).
TEST(BestMoment, OfDamageThatGrowsByTheSquareRootIsTheClosedForm) {
  const double c = 0.8;
  const double m = 0.002;
  const auto minutes = [&](double cuts) { return m * std::pow(c * std::sqrt(cuts), 3); };

  const BestMoment best = best_moment(kSetupMinutes, minutes, {1, 1e6});

  EXPECT_EQ(best.where, Where::inside);
  EXPECT_NEAR(best.cuts / std::pow(2 * kSetupMinutes / (m * c * c * c), 2.0 / 3), 1, 1e-6);
}

// With h = c sqrt(x) and cost p h + q h^2 the minutes per cut, s/x + p c/sqrt(x) + q c^2, only
// fall.
TEST(BestMoment, IsAsLateAsMayBeWhereWearSlowsDown) {
  const auto minutes = [](double cuts) { return 0.2 * std::sqrt(cuts) + 0.01 * cuts; };

  const BestMoment best = best_moment(kSetupMinutes, minutes, {1, 500});

  EXPECT_EQ(best.where, Where::at_last);
  EXPECT_DOUBLE_EQ(best.cuts, 500);
  EXPECT_NEAR(best.minutes_per_1000_cuts, 1000 * minutes(500) / 500 + 1000 * 3 / 500.0, 1e-9);
}

TEST(BestMoment, IsAtOnceWhereNothingIsToBeSetUpAndCostRunsAhead) {
  const auto minutes = [](double cuts) { return cuts * cuts; };

  EXPECT_EQ(best_moment(0, minutes, {10, 500}).where, Where::at_first);
  EXPECT_DOUBLE_EQ(best_moment(0, minutes, {10, 500}).cuts, 10);
}

// Of several valleys the deepest: |x - 10| + 1 and, deeper, |x - 1000|/100 + 0.5, per cut.
TEST(BestMoment, FindsTheDeepestOfSeveralValleys) {
  const auto minutes = [](double cuts) {
    return cuts * std::min(std::abs(cuts - 10) + 1, std::abs(cuts - 1000) / 100 + 0.5);
  };

  EXPECT_NEAR(best_moment(0, minutes, {1, 1e4}).cuts, 1000, 1e-3);
}

// A bevel on parallel faces costs T h, a micro-bevel h^2: only the micro-bevel has a best moment.
TEST(BestMoment, ComesForAMicroBevelAndNotForABevelResetOnParallelFaces) {
  const Bevel bevel{.bevel_angle = {15}, .primary_angle = {0}, .thickness_behind_edge_mm = 0.3};
  const auto damage = [](double cuts) { return EdgeDamage{.deepest_chip_um = 0.05 * cuts}; };
  const auto reset = [&](double cuts) {
    return 1e-4 * reset_bevel(bevel, damage(cuts)).value().area_um2;
  };
  const auto micro = [&](double cuts) {
    return 1e-4 * set_micro_bevel(bevel, {20}, damage(cuts)).value().area_um2;
  };

  const double per_um2 = std::tan(std::numbers::pi / 12) * std::tan(std::numbers::pi / 9) /
                         (std::tan(std::numbers::pi / 9) - std::tan(std::numbers::pi / 12));
  EXPECT_EQ(best_moment(0.01, reset, {1, 500}).where, Where::at_last);
  EXPECT_NEAR(
      best_moment(0.01, micro, {1, 500}).cuts, std::sqrt(0.01 / (1e-4 * per_um2)) / 0.05, 1e-3);
}

TEST(BestMoment, RefusesWhatCannotBe) {
  const auto minutes = [](double cuts) { return cuts; };
  const auto endless = [](double) { return std::numeric_limits<double>::infinity(); };

  EXPECT_THROW((void)best_moment(-1, minutes, {1, 2}), std::logic_error);
  EXPECT_THROW((void)best_moment(1, minutes, {0, 2}), std::logic_error);
  EXPECT_THROW((void)best_moment(1, minutes, {2, 2}), std::logic_error);
  EXPECT_THROW((void)best_moment(1, endless, {1, 2}), std::logic_error);
}

TEST(DamageSeen, IsStraightBetweenItsPointsAndBeyondThem) {
  const std::vector<DamageSeen> seen = {{100, 5}, {200, 15}};

  EXPECT_DOUBLE_EQ(depth_after_um(seen, 0), 0);
  EXPECT_DOUBLE_EQ(depth_after_um(seen, 50), 2.5);
  EXPECT_DOUBLE_EQ(depth_after_um(seen, 150), 10);
  EXPECT_DOUBLE_EQ(depth_after_um(seen, 300), 25);
  EXPECT_THROW((void)depth_after_um({}, 1), std::logic_error);
}

}  // namespace
}  // namespace keenfall::sharpening
