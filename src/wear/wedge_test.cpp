#include "wear/wedge.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
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
  const ApexSteel steel{.flow_stress_mpa = 2400, .transition_section_um = 1};
  for (const double force : {0.01, 0.1, 1.0}) {
    const double pull =
        2 * force * 1e6 / (steel.flow_stress_mpa * std::sqrt(steel.transition_section_um));

    const auto depth = chip_depth_um(steel, wedge, 0, {.force_newton = force});

    ASSERT_TRUE(depth);
    EXPECT_NEAR(*depth, std::pow(pull, 2.0 / 3) / (2 * wedge.tangent), 1e-9 * *depth);
  }
}

TEST(Wedge, FoldsAndChipsAtOneLoadWhereTheSectionIsTheTransitionSection) {
  const Wedge wedge = wedge_of({20});
  const double land = 0.5;
  ApexSteel steel = unbreakable();
  const SidewaysLoad load{.force_newton = 0.05, .contact_length_um = 12};
  const auto hinge = fold_height_um(steel, wedge, land, load);
  ASSERT_TRUE(hinge);
  const double section = land + 2 * wedge.tangent * *hinge;

  steel.transition_section_um = section * (1 - 1e-10);
  const auto chip = chip_depth_um(steel, wedge, land, load);
  steel.transition_section_um = section * (1 + 1e-10);

  ASSERT_TRUE(chip);
  EXPECT_NEAR(*chip, *hinge, 1e-8 * *hinge);
  EXPECT_FALSE(chip_depth_um(steel, wedge, land, load));
}

// Least load over all hinges and breaks, searched through (the lesser of both at each section).
TEST(Wedge, StandsTwistUpToTheLeastLoadOfAnySection) {
  const Wedge wedge = wedge_of({15});
  const ApexSteel steel = hard_steel();
  for (const double land : {0.5, 1.0, 1.35, 1.45, 2.0, 5.0}) {
    double least = std::numeric_limits<double>::infinity();
    for (int i = 0; i < 22000; ++i) {
      const double y = 1e-3 * std::pow(1.0005, i);
      const double section = land + 2 * wedge.tangent * y;
      const double weaker = std::min(1.0, std::sqrt(steel.transition_section_um / section));
      least = std::min(least, steel.flow_stress_mpa * 1e-3 * section * section * weaker / (4 * y));
    }
    const double threshold = twist_threshold_newton_per_mm(steel, wedge, land);
    const auto gives_way = [&](double q) {
      return twist_chip_depth_um(steel, wedge, land, q) ||
             twist_fold_height_um(steel, wedge, land, q);
    };

    EXPECT_NEAR(threshold / least, 1, 1e-5) << land;
    EXPECT_FALSE(gives_way(threshold * (1 - 1e-9))) << land;
    EXPECT_TRUE(gives_way(threshold * (1 + 1e-9))) << land;
  }
}

// A worn land of a brittle steel: no hinge anywhere, yet it breaks.
TEST(Wedge, BreaksUnderLoadsThatBendNothing) {
  const Wedge wedge = wedge_of({15});
  const SidewaysLoad load{.force_newton = 0.15, .contact_length_um = 15};

  EXPECT_FALSE(fold_height_um(hard_steel(), wedge, 5, load));
  EXPECT_TRUE(chip_depth_um(hard_steel(), wedge, 5, load));
}

// The definitions themselves: what is found must solve them.
TEST(Wedge, FindsRootsThatSolveTheirEquations) {
  const Wedge wedge = wedge_of({17});
  const double t = wedge.tangent;
  const ApexSteel steel = hard_steel();
  const double stress = steel.flow_stress_mpa * 1e-6;  // N/um^2
  const SidewaysLoad load{.force_newton = 0.03, .contact_length_um = 15};
  const double y = fold_height_um(steel, wedge, 0.6, load).value_or(0);
  const SidewaysLoad hard{.force_newton = 0.1, .contact_length_um = 15};
  const double d = chip_depth_um(steel, wedge, 0.6, hard).value_or(0);
  const double dent = dent_depth_um(steel, wedge, 0.6, {.force_newton = 0.03, .diameter_um = 60});
  const double line = twist_chip_depth_um(steel, wedge, 0.6, 2.0).value_or(0);

  EXPECT_NEAR(stress * (15 + 2 * y) * std::pow(0.6 + 2 * y * t, 2) / 4, 0.03 * y, 1e-10);
  EXPECT_NEAR(stress * (15 + 2 * d) * std::pow(0.6 + 2 * d * t, 1.5) *
                  std::sqrt(steel.transition_section_um) / 4,
              0.1 * d,
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
  EXPECT_NEAR(*chip_depth_um(large, wedge, 500, large_load),
              1e3 * *chip_depth_um(hard_steel(), wedge, 0.5, load),
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
