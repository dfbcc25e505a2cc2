#include "materials/abrasion_resistance.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>
#include <stdexcept>

namespace keenfall::materials {
namespace {

Microstructure steel(double matrix_hv, double fraction, double carbide_hv, double diameter_um) {
  Microstructure made;
  made.matrix_hv = matrix_hv;
  made.carbide_volume_fraction = fraction;
  made.carbide_hv = carbide_hv;
  made.carbide_diameter_um = diameter_um;
  return made;
}

double a_number(int lo, int hi) { return *rc::gen::inRange(lo, hi); }

// Rabinowicz's three branches, worked by hand: 3/5.3 at equal hardness; (3/2.43)/64 at twice.
TEST(AbrasionResistance, FollowsTheThreeBranchesOfTheHardSoftFactor) {
  EXPECT_DOUBLE_EQ(hard_soft_factor(500, 1000), 1);
  EXPECT_DOUBLE_EQ(hard_soft_factor(1000, 1000), 3 / 5.3);
  EXPECT_DOUBLE_EQ(hard_soft_factor(2000, 1000), 3 / 2.43 / 64);
}

// The steps of the published form: 1 - (3/5.3) 0.8^-2.5 = 0.01117, and from 0.324022 to 0.323635.
TEST(AbrasionResistance, StepsDownByAPercentAtFourFifthsAndByATenthOfThatAtFiveFourths) {
  constexpr double kJustBelow = 1 - 1e-12;

  EXPECT_NEAR(
      hard_soft_factor(800 * kJustBelow, 1000) - hard_soft_factor(800, 1000), 0.01118, 5e-5);
  EXPECT_NEAR(
      hard_soft_factor(1250 * kJustBelow, 1000) / hard_soft_factor(1250, 1000), 1.0012, 1e-4);
}

// Pintaude 2010 and the coding of regimes from memory: abrasive over body above 1.2 wears fully,
// below 0.8 one to two decades less.
TEST(AbrasionResistance, ChangesRegimeWhereThePublishedRuleHasIt) {
  EXPECT_GT(hard_soft_factor(1000, 1250), 0.98);
  EXPECT_GT(hard_soft_factor(1000, 1200), 0.85);
  EXPECT_LT(hard_soft_factor(1000, 800), 0.33);
  EXPECT_LT(hard_soft_factor(1000, 600), 0.1);
  EXPECT_GT(hard_soft_factor(1000, 450), 0.01);
}

// Quartz of 1100 HV cuts a matrix of 60 HRC (697 HV) freely; an M7C3 of 1500 HV hardly at all.
// Alumina of 2000 HV cuts that matrix, and MC of 2700 HV a sixth as fast; diamond both.
TEST(AbrasionResistance, LetsQuartzCutTheMatrixAndNotTheCarbide) {
  EXPECT_EQ(hard_soft_factor(697, 1100), 1);
  EXPECT_LT(hard_soft_factor(1500, 1100), 0.21);
  EXPECT_EQ(hard_soft_factor(697, 2000), 1);
  EXPECT_LT(hard_soft_factor(2700, 2000), 0.21);
  EXPECT_EQ(hard_soft_factor(2700, 8000), 1);
}

TEST(AbrasionResistance, IsOneAtSevenHundredVickersUnderSomethingMuchHarder) {
  EXPECT_DOUBLE_EQ(abrasion_resistance(steel(700, 0, 1500, 1), {8000, 1}), 1);
}

// By hand: matrix 680 HV and carbides 2800 HV under 8000 HV both have f = 1, so R_m = 680/700,
// kappa = 2800/680, and a groove as wide as a carbide leaves half its protection.
TEST(AbrasionResistance, MixesLinearlyWhereTheAbrasiveIsFarHarder) {
  const double expected = 680.0 / 700 * (1 + 0.165 * (2800.0 / 680 - 1) * 0.5);

  EXPECT_DOUBLE_EQ(abrasion_resistance(steel(680, 0.165, 2800, 2), {8000, 2}), expected);
}

// By hand, in small steps: 680/700 = 0.97143, f = 0.56604 * 0.97143^-2.5 = 0.60859, R_m = 1.59621;
// the carbide would give far more than twelve times that; phi = 1/(1 + 1/4) = 0.8;
// R = 1.59621 * (1 + 0.165 * 11 * 0.8) = 3.9139.
TEST(AbrasionResistance, IsCappedWhereTheCarbidesWouldNeverWear) {
  EXPECT_NEAR(abrasion_resistance(steel(680, 0.165, 2800, 2), {700, 1}), 3.9139, 2e-4);
  EXPECT_NEAR(abrasion_resistance(steel(680, 0.165, 2800, 2), {700, 1, 6}),
              1.59621 * (1 + 0.165 * 5 * 0.8),
              1e-4);
}

TEST(AbrasionResistance, OfCarbidesIsLostInGroovesMuchWiderThanThey) {
  EXPECT_DOUBLE_EQ(carbide_protection(0, 2), 1);
  EXPECT_DOUBLE_EQ(carbide_protection(2, 2), 0.5);
  EXPECT_NEAR(carbide_protection(200, 2), 1e-4, 1e-8);
}

TEST(AbrasionResistance, RefusesWhatCannotBe) {
  const Microstructure sound = steel(700, 0.1, 1500, 1);

  EXPECT_THROW((void)abrasion_resistance(sound, {0, 1}), std::logic_error);
  EXPECT_THROW((void)abrasion_resistance(sound, {1000, -1}), std::logic_error);
  EXPECT_THROW((void)abrasion_resistance(sound, {1000, 1, 0.5}), std::logic_error);
  EXPECT_THROW((void)abrasion_resistance(steel(700, 1.1, 1500, 1), {1000, 1}), std::logic_error);
  EXPECT_THROW((void)abrasion_resistance(steel(0, 0.1, 1500, 1), {1000, 1}), std::logic_error);
  const double not_a_number = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW((void)abrasion_resistance(sound, {not_a_number, 1}), std::logic_error);
}

RC_GTEST_PROP(AbrasionResistance, NeverFallsWithAHarderBodyNorRisesWithAHarderAbrasive, ()) {
  const Microstructure soft =
      steel(a_number(300, 900), a_number(0, 30) / 100.0, a_number(900, 3500), a_number(1, 20));
  Microstructure hard = soft;
  hard.matrix_hv += a_number(0, 300);
  hard.carbide_hv += a_number(0, 1000);
  const AbrasiveAction action{a_number(400, 9000), a_number(0, 20)};
  const AbrasiveAction harder{action.abrasive_hv + a_number(0, 3000), action.groove_width_um};

  RC_ASSERT(abrasion_resistance(hard, action) >= abrasion_resistance(soft, action) * (1 - 1e-12));
  RC_ASSERT(abrasion_resistance(soft, harder) <= abrasion_resistance(soft, action) * (1 + 1e-12));
}

RC_GTEST_PROP(AbrasionResistance, FallsWithWiderGroovesWhereCarbidesAreHarder, ()) {
  const Microstructure made =
      steel(a_number(300, 900), a_number(0, 30) / 100.0, a_number(900, 3500), a_number(1, 20));
  const AbrasiveAction narrow{a_number(400, 9000), a_number(0, 20)};
  const AbrasiveAction wide{narrow.abrasive_hv, narrow.groove_width_um + a_number(0, 20)};

  RC_ASSERT(abrasion_resistance(made, wide) <= abrasion_resistance(made, narrow) * (1 + 1e-12));
}

RC_GTEST_PROP(AbrasionResistance, LiesBetweenMatrixAloneAndTheCapTimesIt, ()) {
  const Microstructure made =
      steel(a_number(300, 900), a_number(0, 100) / 100.0, a_number(900, 3500), a_number(1, 20));
  const AbrasiveAction action{a_number(400, 9000), a_number(0, 20)};
  const double matrix = phase_resistance(made.matrix_hv, action.abrasive_hv);

  RC_ASSERT(abrasion_resistance(made, action) >= matrix * (1 - 1e-12));
  RC_ASSERT(abrasion_resistance(made, action) <= 12 * matrix * (1 + 1e-12));
}

}  // namespace
}  // namespace keenfall::materials
