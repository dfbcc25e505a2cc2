#include "sharpening/removal.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <stdexcept>

namespace keenfall::sharpening {
namespace {

using testing::HasSubstr;

constexpr std::optional<double> kNever;

double passes(const CuttingRate& rate, double volume_mm3, std::optional<double> every = {}) {
  return passes_to_remove(rate, volume_mm3, every).value();
}

RemovalConstants on_diamond() {
  RemovalConstants constants;
  constants.matrix_hv = 700;
  constants.carbide_volume_fraction = 0.1;
  constants.carbide_hv = 1400;
  constants.carbide_diameter_um = 4;
  constants.abrasive_hv = 8000;
  constants.groove_width_um = 4;
  constants.cutting_power_ratio = 3;
  return constants;
}

// By hand: R = 1 + 0.1 (2 - 1)/2 = 1.05; 2e-3 * 3/1.05 * 10 N * 0.12 m.
TEST(Removal, OfAFreshPassIsForceTimesPathOverResistance) {
  const CuttingRate rate = cutting_rate(on_diamond(), {.force_newton = 10, .length_mm = 120});

  EXPECT_DOUBLE_EQ(rate.fresh_mm3_per_pass, 2e-3 * 3 / 1.05 * 10 * 0.12);
}

// Preston: twice the force or twice the path take away twice as much.
TEST(Removal, GoesWithForceAndWithPath) {
  const double once = cutting_rate(on_diamond(), {10, 120}).fresh_mm3_per_pass;

  EXPECT_NEAR(cutting_rate(on_diamond(), {20, 120}).fresh_mm3_per_pass, 2 * once, 1e-15);
  EXPECT_NEAR(cutting_rate(on_diamond(), {10, 240}).fresh_mm3_per_pass, 2 * once, 1e-15);
}

// By hand: 2800/2100 - 0.9 = 0.4333; 120/(1 + 20 * 0.165 * 0.4333) = 49.38.
TEST(Removal, GlazesSoonerWhereCarbidesAreHarderThanTheGrain) {
  RemovalConstants constants = on_diamond();
  EXPECT_DOUBLE_EQ(cutting_rate(constants, {}).glazing_passes, 120);

  constants.abrasive_hv = 2100;
  constants.carbide_hv = 2800;
  constants.carbide_volume_fraction = 0.165;
  EXPECT_NEAR(cutting_rate(constants, {}).glazing_passes, 49.38, 5e-3);
}

TEST(Removal, OfAStoneThatStaysFreshIsAStraightLine) {
  const CuttingRate fresh{.fresh_mm3_per_pass = 2e-3, .glazing_passes = 50};

  EXPECT_DOUBLE_EQ(removed_mm3(fresh, 1000), 2);
  EXPECT_DOUBLE_EQ(passes(fresh, 2), 1000);
  EXPECT_DOUBLE_EQ(passes(fresh, 2, 30), 1000);
}

// With k = 0 the inverse is -n_g ln(1 - V/(v n_g)).
TEST(Removal, OfAStoneThatKeepsNothingIsTheClosedForm) {
  const CuttingRate rate{
      .fresh_mm3_per_pass = 1e-3, .blunt_share_fraction = 0, .glazing_passes = 100};

  EXPECT_NEAR(passes(rate, 0.09), -100 * std::log(0.1), 1e-9);
}

TEST(Removal, ByAStoneThatStopsCuttingIsRefusedUnlessItIsDressed) {
  const CuttingRate rate{
      .fresh_mm3_per_pass = 1e-3, .blunt_share_fraction = 0, .glazing_passes = 100};

  const auto never = passes_to_remove(rate, 0.2, kNever);

  ASSERT_FALSE(never.has_value());
  EXPECT_THAT(never.error().sentence, HasSubstr("stops cutting after what 100 fresh passes"));
  EXPECT_GT(passes(rate, 0.2, 50), 200);
}

// Long after it glazed a stone cuts at k times its rate, having given (1 - k) n_g passes at first.
TEST(Removal, EndsInTheRateOfAGlazedStone) {
  const CuttingRate rate{
      .fresh_mm3_per_pass = 1e-3, .blunt_share_fraction = 0.2, .glazing_passes = 50};

  EXPECT_NEAR(removed_mm3(rate, 5000), 1e-3 * (0.2 * 5000 + 0.8 * 50), 1e-12);
  EXPECT_NEAR(removed_mm3(rate, 5001) - removed_mm3(rate, 5000), 0.2e-3, 1e-12);
}

// By hand: 30 passes of v = 1e-3, k = 0.2, n_g = 50 give 6 + 40 (1 - exp(-0.6)) = 24.0475 fresh
// passes; ten such turns take away 0.240475 mm^3.
TEST(Removal, BeginsAnewAfterEachDressing) {
  const CuttingRate rate{
      .fresh_mm3_per_pass = 1e-3, .blunt_share_fraction = 0.2, .glazing_passes = 50};
  const double in_thirty_mm3 = 1e-3 * (6 + 40 * (1 - std::exp(-0.6)));

  EXPECT_NEAR(removed_mm3(rate, 30), in_thirty_mm3, 1e-15);
  EXPECT_NEAR(passes(rate, 9.5 * in_thirty_mm3, 30), 270 + passes(rate, 0.5 * in_thirty_mm3), 1e-6);
}

// Preston's rate v [k + (1 - k) exp(-n/n_g)], integrated over the passes.
TEST(Removal, IsTheIntegralOfItsRate) {
  for (const double k : {0.0, 0.2, 0.8, 1.0}) {
    for (const double passes_done : {0.5, 30.0, 400.0}) {
      const CuttingRate rate{
          .fresh_mm3_per_pass = 1.3e-3, .blunt_share_fraction = k, .glazing_passes = 49};
      const double integral_mm3 = boost::math::quadrature::gauss_kronrod<double, 61>::integrate(
          [&](double n) { return 1.3e-3 * (k + (1 - k) * std::exp(-n / 49)); }, 0.0, passes_done);

      EXPECT_NEAR(removed_mm3(rate, passes_done) / integral_mm3, 1, 1e-9);
      EXPECT_NEAR(passes(rate, integral_mm3) / passes_done, 1, 1e-9);
    }
  }
}

TEST(Removal, OfNothingTakesNoPass) {
  const CuttingRate rate{.fresh_mm3_per_pass = 1e-3, .glazing_passes = 50};

  EXPECT_EQ(passes(rate, 0), 0);
  EXPECT_EQ(passes(rate, 0, 30), 0);
  EXPECT_EQ(removed_mm3(rate, 0), 0);
}

TEST(Removal, RefusesWhatCannotBe) {
  const CuttingRate rate{.fresh_mm3_per_pass = 1e-3, .glazing_passes = 50};

  EXPECT_THROW((void)removed_mm3(rate, -1), std::logic_error);
  EXPECT_THROW((void)passes_to_remove(rate, -1, kNever), std::logic_error);
  EXPECT_THROW((void)passes_to_remove(rate, 1, 0), std::logic_error);
  EXPECT_THROW((void)passes_to_remove({}, 1, kNever), std::logic_error);
}

RC_GTEST_PROP(Removal, ComesBackFromPassesToTheSameVolume, ()) {
  const CuttingRate rate{.fresh_mm3_per_pass = *rc::gen::inRange(1, 100) * 1e-4,
                         .blunt_share_fraction = *rc::gen::inRange(1, 101) / 100.0,
                         .glazing_passes = *rc::gen::inRange(5, 300) * 1.0};
  const double volume_mm3 = *rc::gen::inRange(1, 10000) * 1e-3;

  RC_ASSERT(std::abs(removed_mm3(rate, passes(rate, volume_mm3)) / volume_mm3 - 1) < 1e-10);
}

RC_GTEST_PROP(Removal, TakesFewerPassesTheMoreOftenAStoneIsDressed, ()) {
  const CuttingRate rate{.fresh_mm3_per_pass = *rc::gen::inRange(1, 100) * 1e-4,
                         .blunt_share_fraction = *rc::gen::inRange(1, 101) / 100.0,
                         .glazing_passes = *rc::gen::inRange(5, 300) * 1.0};
  const double volume_mm3 = *rc::gen::inRange(1, 1000) * 1e-3;
  const double every = *rc::gen::inRange(5, 200);

  const double never = passes(rate, volume_mm3);
  const double dressed = passes(rate, volume_mm3, every);

  RC_ASSERT(dressed <= never * (1 + 1e-9));
  RC_ASSERT(dressed >= volume_mm3 / rate.fresh_mm3_per_pass * (1 - 1e-9));
}

RC_GTEST_PROP(Removal, TakesMorePassesForMoreSteel, ()) {
  const CuttingRate rate{.fresh_mm3_per_pass = 1e-3,
                         .blunt_share_fraction = *rc::gen::inRange(1, 101) / 100.0,
                         .glazing_passes = *rc::gen::inRange(5, 300) * 1.0};
  const double less_mm3 = *rc::gen::inRange(1, 1000) * 1e-3;
  const double more_mm3 = less_mm3 + *rc::gen::inRange(1, 1000) * 1e-3;

  RC_ASSERT(passes(rate, more_mm3) > passes(rate, less_mm3));
  RC_ASSERT(passes(rate, more_mm3, 30) > passes(rate, less_mm3, 30));
}

}  // namespace
}  // namespace keenfall::sharpening
