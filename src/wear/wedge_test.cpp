#include "wear/wedge.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace keenfall::wear {
namespace {

using trials::PerSideAngle;

// Hardness 746 HV and toughness 14 MPa sqrt(m), 577 HV and 45: usual for AISI A11 at 62 HRC and for
// 75Ni8 at 54 HRC (guesses; docs/methods/apex.md).
ApexSteel hard_steel() {
  const double stress = flow_stress_mpa(746);
  return {.flow_stress_mpa = stress,
          .transition_section_um =
              transition_section_um({.toughness_mpa_sqrt_m = 14, .flow_stress_mpa = stress})};
}

ApexSteel tough_steel() {
  const double stress = flow_stress_mpa(577);
  return {.flow_stress_mpa = stress,
          .transition_section_um =
              transition_section_um({.toughness_mpa_sqrt_m = 45, .flow_stress_mpa = stress})};
}

ApexSteel unbreakable() { return {.flow_stress_mpa = 2000}; }

// From a trial computation in another language: 3.3 um and 57 um.
TEST(Wedge, ChipsAboveASectionThatToughSteelNeverReaches) {
  EXPECT_NEAR(hard_steel().transition_section_um, 3.3, 0.05);
  EXPECT_NEAR(tough_steel().transition_section_um, 57, 0.5);
}

// The same trial computation: 0.6536 N/mm at 0.5 um of land, 15 degrees, 746 HV.
TEST(Wedge, StandsSidewaysLoadsUpToTheThresholdAndThenHingesAtHalfALandOverTheTangent) {
  const Wedge wedge = wedge_of({15});
  const double threshold = twist_threshold_newton_per_mm(hard_steel(), wedge, 0.5);

  EXPECT_NEAR(threshold, 0.6536, 0.00005);
  EXPECT_FALSE(twist_fold_height_um(hard_steel(), wedge, 0.5, threshold * (1 - 1e-12)));
  const auto hinge = twist_fold_height_um(hard_steel(), wedge, 0.5, threshold * (1 + 1e-12));
  ASSERT_TRUE(hinge);
  EXPECT_NEAR(*hinge, 0.5 / (2 * wedge.tangent), 1e-5);
}

// Closed form of a sharp wedge: y = sqrt(F / (2 stress)) / t.
TEST(Wedge, FoldsAsTheClosedFormSaysWhereItIsSharp) {
  const Wedge wedge = wedge_of({15});
  for (const double force : {0.01, 0.1, 1.0}) {
    const auto height = fold_height_um(unbreakable(), wedge, 0, {.force_newton = force});

    ASSERT_TRUE(height);
    EXPECT_NEAR(*height, std::sqrt(force / (2 * 2000)) / wedge.tangent * 1e3, 1e-9 * *height);
  }
}

// Closed form of a sharp wedge: d = (2 F / (stress sqrt(t*)))^(2/3) / (2 t).
TEST(Wedge, ChipsAsTheClosedFormSaysWhereItIsSharp) {
  const Wedge wedge = wedge_of({15});
  const ApexSteel steel = hard_steel();
  for (const double force : {0.01, 0.1, 1.0}) {
    const double pull =
        2 * force * 1e6 / (steel.flow_stress_mpa * std::sqrt(steel.transition_section_um));

    const double depth = chip_depth_um(steel, wedge, 0, {.force_newton = force});

    EXPECT_NEAR(depth, std::pow(pull, 2.0 / 3) / (2 * wedge.tangent), 1e-9 * depth);
  }
}

TEST(Wedge, FoldsAndChipsAtOneLoadWhereTheSectionIsTheTransitionSection) {
  const Wedge wedge = wedge_of({20});
  const double land = 0.5;
  const double contact = 12;
  ApexSteel steel = unbreakable();
  const SidewaysLoad load{.force_newton = 0.05, .contact_length_um = contact};
  const auto hinge = fold_height_um(steel, wedge, land, load);
  ASSERT_TRUE(hinge);
  steel.transition_section_um = land + 2 * wedge.tangent * *hinge;

  EXPECT_NEAR(chip_depth_um(steel, wedge, land, load), *hinge, 1e-9 * *hinge);
}

// The definitions themselves: what is found must solve them.
TEST(Wedge, FindsRootsThatSolveTheirEquations) {
  const Wedge wedge = wedge_of({17});
  const double t = wedge.tangent;
  const ApexSteel steel = hard_steel();
  const double stress = steel.flow_stress_mpa * 1e-6;  // N/um^2
  const SidewaysLoad load{.force_newton = 0.03, .contact_length_um = 15};
  const double y = fold_height_um(steel, wedge, 0.6, load).value_or(0);
  const double d = chip_depth_um(steel, wedge, 0.6, load);
  const double dent = dent_depth_um(steel, wedge, 0.6, {.force_newton = 0.03, .diameter_um = 60});
  const double line = twist_chip_depth_um(steel, wedge, 0.6, 2.0);

  EXPECT_NEAR(stress * (15 + 2 * y) * std::pow(0.6 + 2 * y * t, 2) / 4, 0.03 * y, 1e-10);
  EXPECT_NEAR(stress * (15 + 2 * d) * std::pow(0.6 + 2 * d * t, 1.5) *
                  std::sqrt(steel.transition_section_um) / 4,
              0.03 * d,
              1e-10);
  EXPECT_NEAR(2 * std::sqrt(60 * dent) * (0.6 + 4.0 / 3 * t * dent),
              0.03 / (stress * 1.155 * (1 + 17 * std::numbers::pi / 180)),
              1e-9);
  EXPECT_NEAR(
      stress * std::pow(0.6 + 2 * line * t, 1.5) * std::sqrt(steel.transition_section_um) / 4,
      2e-3 * line,
      1e-10);
}

TEST(Wedge, StandsASmallSidewaysForce) {
  EXPECT_FALSE(fold_height_um(
      hard_steel(), wedge_of({15}), 0.5, {.force_newton = 0.001, .contact_length_um = 10}));
  EXPECT_FALSE(fold_height_um(hard_steel(), wedge_of({15}), 0.5, {.force_newton = 0}));
  EXPECT_EQ(dent_depth_um(hard_steel(), wedge_of({15}), 0.5, {.diameter_um = 60}), 0);
}

// Lengths in another unit: all lengths a thousand times as large, forces a million times, line
// loads a thousand times.
TEST(Wedge, DoesNotDependOnTheUnitOfLength) {
  const Wedge wedge = wedge_of({15});
  ApexSteel large = hard_steel();
  large.transition_section_um *= 1e3;
  const SidewaysLoad load{.force_newton = 0.05, .contact_length_um = 9};
  const SidewaysLoad large_load{.force_newton = 0.05e6, .contact_length_um = 9e3};

  EXPECT_NEAR(*fold_height_um(large, wedge, 500, large_load),
              1e3 * *fold_height_um(hard_steel(), wedge, 0.5, load),
              1e-8);
  EXPECT_NEAR(chip_depth_um(large, wedge, 500, large_load),
              1e3 * chip_depth_um(hard_steel(), wedge, 0.5, load),
              1e-8);
  EXPECT_NEAR(
      dent_depth_um(large, wedge, 500, {.force_newton = 0.05e6, .diameter_um = 60e3}),
      1e3 * dent_depth_um(hard_steel(), wedge, 0.5, {.force_newton = 0.05, .diameter_um = 60}),
      1e-8);
  EXPECT_NEAR(*twist_fold_height_um(large, wedge, 500, 1000),
              1e3 * *twist_fold_height_um(hard_steel(), wedge, 0.5, 1),
              1e-8);
}

TEST(Wedge, HasAnAngleBelowARightAngle) {
  EXPECT_THROW((void)wedge_of({0}), std::logic_error);
  EXPECT_THROW((void)wedge_of({90}), std::logic_error);
}

}  // namespace
}  // namespace keenfall::wear
