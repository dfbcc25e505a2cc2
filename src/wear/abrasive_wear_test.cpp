#include "wear/abrasive_wear.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::wear {
namespace {

constexpr AbrasiveWear kWear{.wear_rate_mm3_per_newton_metre = 1.5e-7,
                             .line_load_newton_per_mm = 1.2,
                             .sliding_m_per_cut = 0.03};

TEST(AbrasiveWear, DoublesTheLandInThreeWearLives) {
  const Wedge wedge = wedge_of({15});
  const double life = wear_life_cuts(kWear, wedge, 0.5);

  EXPECT_NEAR(worn_land_um(kWear, wedge, 0.5, 3 * life), 1.0, 1e-14);
  EXPECT_NEAR(life, 0.25e-6 / (4 * wedge.tangent * 1.5e-7 * 1.2 * 0.03), 1e-10);
}

// tan 25 / tan 15 = 1.74028.
TEST(AbrasiveWear, ShortensLifeWithTheTangentOfTheAngle) {
  EXPECT_NEAR(
      wear_life_cuts(kWear, wedge_of({15}), 0.5) / wear_life_cuts(kWear, wedge_of({25}), 0.5),
      1.74028,
      5e-6);
}

TEST(AbrasiveWear, TakesTheMetalThatArchardsLawSays) {
  const Wedge wedge = wedge_of({20});
  const double land = worn_land_um(kWear, wedge, 0.5, 100);

  const double worn_mm2 = (land * land - 0.25) / (4 * wedge.tangent) * 1e-6;

  EXPECT_NEAR(worn_mm2, 1.5e-7 * 1.2 * 0.03 * 100, 1e-20);
}

// dw/dx = w0^2 (w/w0)^m / (2 w tau), by Runge and Kutta's fourth-order rule.
double integrated_land_ratio(double exponent, double lives) {
  const auto slope = [exponent](double ratio) { return std::pow(ratio, exponent) / (2 * ratio); };
  constexpr int kSteps = 20000;
  const double step = lives / kSteps;
  double ratio = 1;
  for (int i = 0; i < kSteps; ++i) {
    const double k1 = slope(ratio);
    const double k2 = slope(ratio + step * k1 / 2);
    const double k3 = slope(ratio + step * k2 / 2);
    const double k4 = slope(ratio + step * k3);
    ratio += step / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
  }
  return ratio;
}

// Closed forms after ten wear lives: sqrt(11), 8.5^(2/3), 6; and integration.
TEST(AbrasiveWear, FollowsTheExponentOfTheLoad) {
  const Wedge wedge = wedge_of({15});
  const double life = wear_life_cuts(kWear, wedge, 0.5);
  struct Case {
    double exponent, ratio;
  };
  for (const Case& at : {Case{0, 3.31662}, Case{0.5, 4.16498}, Case{1, 6}}) {
    AbrasiveWear wear = kWear;
    wear.load_growth_exponent = at.exponent;
    const double ratio = worn_land_um(wear, wedge, 0.5, 10 * life) / 0.5;

    EXPECT_NEAR(ratio, at.ratio, 1e-5);
    EXPECT_NEAR(ratio, integrated_land_ratio(at.exponent, 10), 1e-9);
  }
}

TEST(AbrasiveWear, LeavesTheLandWhereNothingWears) {
  EXPECT_EQ(worn_land_um({}, wedge_of({15}), 0.5, 1000), 0.5);
  EXPECT_TRUE(std::isinf(wear_life_cuts({}, wedge_of({15}), 0.5)));
}

}  // namespace
}  // namespace keenfall::wear
