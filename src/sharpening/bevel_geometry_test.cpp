#include "sharpening/bevel_geometry.h"

#include "sharpening/rounded_apex.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>
#include <string>
#include <vector>

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

// What a straight cut from an apex risen by h leaves away, integrated from corner to corner of both
// profiles, which are straight in between; `tan_new` of the new face.
double integrated_area_um2(const Bevel& bevel, double rise_um, double tan_new, double land_um) {
  const double t = tan_deg(bevel.bevel_angle.deg);
  const double land_at_um = land_um / (2 * t);
  const double shoulder_um = 500 * bevel.thickness_behind_edge_mm / t;
  const auto goes_um = [&](double above_um) {
    const double stays_um = std::max(0.0, (above_um - rise_um) * tan_new);
    return 2 * (half_thickness_um(bevel, above_um) - stays_um);
  };
  // Where the new face meets the old outline, and no more is taken: found by bisection.
  double lo = std::max(land_at_um, rise_um);
  double hi = 40 * (rise_um + 1000 * bevel.thickness_behind_edge_mm);
  for (int i = 0; i < 200; ++i) {
    const double mid = (lo + hi) / 2;
    (goes_um(mid) > 0 ? lo : hi) = mid;
  }
  std::vector<double> corners = {land_at_um, rise_um, shoulder_um, hi};
  std::ranges::sort(corners);
  double area_um2 = 0;
  for (std::size_t i = 1; i < corners.size() && corners[i] <= hi; ++i) {
    area_um2 += boost::math::quadrature::gauss<double, 7>::integrate(
        goes_um, std::max(land_at_um, corners[i - 1]), corners[i]);
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

TEST(Bevels, LoseWhatIntegratingTheSectionGives) {
  for (const double land_um : {0.0, 0.8, 3.0, 20.0}) {
    for (const double primary_deg : {0.0, 1.5, 5.0}) {
      const Bevel bevel = a_bevel(17, primary_deg, 0.25);
      const EdgeDamage damage{.land_um = land_um, .deepest_chip_um = 12};
      const double rise_um = apex_rise_um(damage, bevel.bevel_angle);

      const double reset_um2 = reset_bevel(bevel, damage).value().area_um2;
      const double micro_um2 = set_micro_bevel(bevel, {24}, damage).value().area_um2;

      EXPECT_NEAR(reset_um2 / integrated_area_um2(bevel, rise_um, tan_deg(17), land_um), 1, 1e-9);
      EXPECT_NEAR(micro_um2 / integrated_area_um2(bevel, rise_um, tan_deg(24), land_um), 1, 1e-9);
    }
  }
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

TEST(Bevels, TellAllThatIsWrongAtOnce) {
  const auto columns = [](const Bevel& bevel, const EdgeDamage& damage) {
    std::vector<std::string> names;
    for (const auto& problem : problems_of(bevel, damage)) names.push_back(problem.place.column);
    return names;
  };

  EXPECT_THAT(columns(a_bevel(95, -1, 0), {.land_um = -1, .deepest_chip_um = -1}),
              testing::ElementsAre(
                  "bevel_angle", "primary_angle", "thickness_behind_edge", "land", "deepest_chip"));
  // Nothing is said of two numbers of which one is no number.
  EXPECT_THAT(columns(a_bevel(0, 20, 0.3), {}), testing::ElementsAre("bevel_angle"));
  EXPECT_THAT(columns(a_bevel(15, 1, 0.3), {}), testing::IsEmpty());
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

// Between the faces and a circle that touches both, from the apex to the round and on to where it
// touches; the second piece over the angle on the circle, where it is smooth.
TEST(RoundedApex, MissesWhatIntegratingTheSectionGives) {
  for (const double deg : {8.0, 17.0, 35.0}) {
    const double theta = deg * std::numbers::pi / 180;
    const double centre_um = 1 / std::sin(theta);  // radius 1
    const double round_um = centre_um - 1;
    using Gauss = boost::math::quadrature::gauss<double, 30>;

    const double below_um2 = Gauss::integrate(
        [&](double above_um) { return 2 * above_um * std::tan(theta); }, 0.0, round_um);
    const double beside_um2 = Gauss::integrate(
        [&](double turn) {
          const double face_um = (centre_um - std::cos(turn)) * std::tan(theta);
          return 2 * (face_um - std::sin(turn)) * std::sin(turn);
        },
        0.0,
        std::numbers::pi / 2 - theta);

    EXPECT_NEAR(rounded_missing_area_um2(1, {deg}) / (below_um2 + beside_um2), 1, 1e-9) << deg;
  }
}

TEST(RoundedApex, NeedsAnAngle) {
  EXPECT_THROW((void)rounded_recession_um(1, {0}), std::logic_error);
  EXPECT_THROW((void)rounded_missing_area_um2(1, {90}), std::logic_error);
}

}  // namespace
}  // namespace keenfall::sharpening
