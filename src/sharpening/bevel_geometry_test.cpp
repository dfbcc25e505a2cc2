#include "sharpening/bevel_geometry.h"

#include "sharpening/rounded_apex.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>
#include <string>

namespace keenfall::sharpening {
namespace {

using testing::HasSubstr;
using trials::PerSideAngle;

double tan_deg(double deg) { return std::tan(deg * std::numbers::pi / 180); }

Bevel a_bevel(double bevel_deg, double primary_deg, double thickness_mm) {
  return {.bevel_angle = {bevel_deg},
          .primary_angle = {primary_deg},
          .thickness_behind_edge_mm = thickness_mm};
}

// Half the thickness of the blade at a distance above an unworn apex.
double half_thickness_um(const Bevel& bevel, double above_um) {
  const double t = tan_deg(bevel.bevel_angle.deg);
  const double half_shoulder_um = 500 * bevel.thickness_behind_edge_mm;
  const double shoulder_um = half_shoulder_um / t;
  if (above_um <= shoulder_um) return above_um * t;
  return half_shoulder_um + (above_um - shoulder_um) * tan_deg(bevel.primary_angle.deg);
}

// What a straight cut from an apex risen by h leaves away, summed by slices; `tan_new` of the new
// face. The profile is straight between its corners, so that the midpoint rule errs only there.
double area_by_slices_um2(const Bevel& bevel, double rise_um, double tan_new, double land_um) {
  const double land_at_um = land_um / (2 * tan_deg(bevel.bevel_angle.deg));
  constexpr int kSlices = 2'000'000;
  const double top_um = 40 * (rise_um + 1000 * bevel.thickness_behind_edge_mm);
  const double step_um = (top_um - land_at_um) / kSlices;
  double area_um2 = 0;
  for (int i = 0; i < kSlices; ++i) {
    const double above_um = land_at_um + (i + 0.5) * step_um;
    const double stays_um = std::max(0.0, (above_um - rise_um) * tan_new);
    area_um2 += 2 * std::max(0.0, half_thickness_um(bevel, above_um) - stays_um) * step_um;
  }
  return area_um2;
}

// By hand: 300 * 20 + 400 * tan 1.5 * tan 15/(tan 15 - tan 1.5) = 6011.609.
TEST(Bevels, LoseTheAreaWorkedByHand) {
  const auto steel = reset_bevel(a_bevel(15, 1.5, 0.3), {.deepest_chip_um = 20});

  EXPECT_NEAR(steel.value().area_um2, 6011.609, 1e-3);
  EXPECT_DOUBLE_EQ(steel.value().apex_rise_um, 20);
}

// By hand: 100 * tan 15 * tan 20/(tan 20 - tan 15) = 101.567 for 10 um.
TEST(Bevels, LoseFarLessToAMicroBevel) {
  const Bevel bevel = a_bevel(15, 1.5, 0.3);
  const EdgeDamage damage{.deepest_chip_um = 10};

  EXPECT_NEAR(set_micro_bevel(bevel, {20}, damage).value().area_um2, 101.567, 1e-3);
  EXPECT_NEAR(reset_bevel(bevel, damage).value().area_um2, 3002.902, 1e-3);
}

// With parallel faces the new bevel is the old one moved: T h, less what wear took already.
TEST(Bevels, OnParallelFacesLoseExactlyThicknessTimesRise) {
  const double w = 3;
  const auto steel = reset_bevel(a_bevel(17, 0, 0.25), {.land_um = w, .deepest_chip_um = 12});
  const double rise_um = w / (2 * tan_deg(17)) + 12;

  EXPECT_DOUBLE_EQ(steel.value().apex_rise_um, rise_um);
  EXPECT_NEAR(steel.value().area_um2, 250 * rise_um - w * w / (4 * tan_deg(17)), 1e-9);
  EXPECT_DOUBLE_EQ(steel.value().thickness_after_mm, 0.25);
}

TEST(Bevels, LoseWhatSummingSlicesGives) {
  const Bevel bevel = a_bevel(17, 2, 0.25);
  const EdgeDamage damage{.land_um = 3, .deepest_chip_um = 12};
  const double rise_um = apex_rise_um(damage, bevel.bevel_angle);

  const double reset_um2 = reset_bevel(bevel, damage).value().area_um2;
  const double micro_um2 = set_micro_bevel(bevel, {22}, damage).value().area_um2;

  EXPECT_NEAR(reset_um2 / area_by_slices_um2(bevel, rise_um, tan_deg(17), 3), 1, 1e-9);
  EXPECT_NEAR(micro_um2 / area_by_slices_um2(bevel, rise_um, tan_deg(22), 3), 1, 1e-8);
}

// The new shoulder lies where the new face meets the old one.
TEST(Bevels, GetThickerWithEveryReset) {
  const Bevel bevel = a_bevel(17, 2, 0.25);
  const auto steel = reset_bevel(bevel, {.deepest_chip_um = 50}).value();
  const double above_um = 50 + 500 * steel.thickness_after_mm / tan_deg(17);

  EXPECT_GT(steel.thickness_after_mm, 0.25);
  EXPECT_NEAR(half_thickness_um(bevel, above_um), 500 * steel.thickness_after_mm, 1e-9);
}

TEST(Bevels, WithoutDamageLoseNothing) {
  EXPECT_DOUBLE_EQ(reset_bevel(a_bevel(17, 2, 0.25), {}).value().area_um2, 0);
  EXPECT_DOUBLE_EQ(set_micro_bevel(a_bevel(17, 2, 0.25), {20}, {}).value().area_um2, 0);
}

TEST(Bevels, ThatAreNoneAreRefused) {
  const auto parallel = reset_bevel(a_bevel(15, 15, 0.3), {});
  ASSERT_FALSE(parallel.has_value());
  EXPECT_EQ(parallel.error().sentence,
            "the faces behind the bevel stand at 15° per side, the bevel at 15° per side: the "
            "bevel must be steeper");

  const double not_a_number = std::numeric_limits<double>::quiet_NaN();
  for (const Bevel& bevel : {a_bevel(0, 0, 0.3),
                             a_bevel(90, 0, 0.3),
                             a_bevel(15, -1, 0.3),
                             a_bevel(15, 1, 0),
                             a_bevel(15, 1, not_a_number)}) {
    EXPECT_FALSE(reset_bevel(bevel, {}).has_value());
    EXPECT_FALSE(set_micro_bevel(bevel, {20}, {}).has_value());
  }
}

TEST(Bevels, RefuseDamageThatIsNone) {
  const Bevel bevel = a_bevel(15, 1, 0.3);

  EXPECT_EQ(reset_bevel(bevel, {.land_um = -1}).error().place.column, "land");
  EXPECT_EQ(reset_bevel(bevel, {.deepest_chip_um = -1}).error().place.column, "deepest_chip");
  EXPECT_THAT(reset_bevel(bevel, {.land_um = 300}).error().sentence,
              HasSubstr("the bevel is worn away"));
}

TEST(Bevels, RefuseAMicroBevelThatIsFlatterOrSwallowsTheBevel) {
  const Bevel bevel = a_bevel(15, 1, 0.3);

  EXPECT_THAT(set_micro_bevel(bevel, {15}, {}).error().sentence,
              HasSubstr("a micro-bevel must be steeper"));
  EXPECT_THAT(set_micro_bevel(bevel, {16}, {.deepest_chip_um = 60}).error().sentence,
              HasSubstr("more than the bevel itself"));
}

RC_GTEST_PROP(Bevels, LoseMoreToDeeperDamageAndLessToAMicroBevel, ()) {
  const Bevel bevel = a_bevel(*rc::gen::inRange(10, 30), *rc::gen::inRange(0, 6), 0.4);
  const EdgeDamage damage{.land_um = *rc::gen::inRange(0, 5) * 1.0,
                          .deepest_chip_um = *rc::gen::inRange(1, 12) * 1.0};
  EdgeDamage deeper = damage;
  deeper.deepest_chip_um += *rc::gen::inRange(1, 12);

  const double area_um2 = reset_bevel(bevel, damage).value().area_um2;

  RC_ASSERT(reset_bevel(bevel, deeper).value().area_um2 > area_um2);
  const auto micro = set_micro_bevel(bevel, {bevel.bevel_angle.deg + 5}, damage);
  RC_ASSERT(!micro.has_value() || micro->area_um2 < area_um2);
}

// Worked by hand to three decimals: recession 1/sin - 1, area cot - (pi/2 - theta), and the
// thickness 3 um behind the apex, for 20, 30 and 40 degrees inclusive.
TEST(RoundedApex, HasTheRecessionAreaAndThicknessWorkedByHand) {
  EXPECT_NEAR(rounded_recession_um(1, {10}), 4.759, 5e-4);
  EXPECT_NEAR(rounded_recession_um(1, {15}), 2.864, 5e-4);
  EXPECT_NEAR(rounded_recession_um(1, {20}), 1.924, 5e-4);
  EXPECT_NEAR(rounded_missing_area_um2(1, {10}), 4.275, 5e-4);
  EXPECT_NEAR(rounded_missing_area_um2(1, {15}), 2.423, 5e-4);
  EXPECT_NEAR(rounded_missing_area_um2(1, {20}), 1.526, 5e-4);
  EXPECT_NEAR(thickness_at_depth_um(3, {10}), 1.058, 5e-4);
  EXPECT_NEAR(thickness_at_depth_um(3, {15}), 1.608, 5e-4);
  EXPECT_NEAR(thickness_at_depth_um(3, {20}), 2.184, 5e-4);
}

// Between the faces and a circle that touches both, from apex to where it touches.
TEST(RoundedApex, MissesWhatSummingSlicesGives) {
  const double theta = 17 * std::numbers::pi / 180;
  const double touches_um = std::cos(theta) / std::tan(theta);  // radius 1
  const double centre_um = 1 / std::sin(theta);
  constexpr int kSlices = 1'000'000;
  const double step_um = touches_um / kSlices;
  double area_um2 = 0;
  for (int i = 0; i < kSlices; ++i) {
    const double above_um = (i + 0.5) * step_um;
    const double from_centre_um = centre_um - above_um;
    const double circle_um =
        from_centre_um < 1 ? std::sqrt(1 - from_centre_um * from_centre_um) : 0;
    area_um2 += 2 * (above_um * std::tan(theta) - circle_um) * step_um;
  }

  EXPECT_NEAR(rounded_missing_area_um2(1, {17}), area_um2, 1e-6);
}

TEST(RoundedApex, NeedsAnAngle) {
  EXPECT_THROW((void)rounded_recession_um(1, {0}), std::logic_error);
  EXPECT_THROW((void)rounded_missing_area_um2(1, {90}), std::logic_error);
}

}  // namespace
}  // namespace keenfall::sharpening
