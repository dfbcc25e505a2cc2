// Closed forms of mechanics, against values worked out separately from the formulas (derived; some
// checked by numerical integration), and integrated again here where that is short.
#include "wear/line_contact.h"
#include "wear/slice_push.h"
#include "wear/wedge_stress.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace keenfall::wear {
namespace {

using trials::PerSideAngle;

TEST(WedgeStress, AgreesWithHandWorkedValues) {
  EXPECT_NEAR(beam_stress_mpa({15}, 1, 10), 2089, 0.5);
  EXPECT_NEAR(sideways_stress_mpa({15}, 1, 10), 2119, 0.5);
  EXPECT_NEAR(axial_stress_mpa({15}, 1, 10), 195, 0.5);
  EXPECT_NEAR(beam_stress_mpa({15}, 1, 50), 418, 0.5);
  EXPECT_NEAR(sideways_stress_mpa({15}, 1, 50), 424, 0.5);
  EXPECT_NEAR(beam_stress_mpa({20}, 1, 10), 1132, 0.5);
  EXPECT_NEAR(sideways_stress_mpa({20}, 1, 10), 1161, 0.5);
}

// The radial stress of a wedge, 2 q sin(a) / (rho (2 alpha - sin 2 alpha)), must carry the load.
TEST(WedgeStress, CarriesTheLoadExactly) {
  const double alpha = 20 * std::numbers::pi / 180;
  const double x_um = 10;
  const double rho_mm = x_um * 1e-3 / std::cos(alpha);
  const double at_surface = sideways_stress_mpa({20}, 1, x_um);
  double sideways = 0;
  constexpr int kSteps = 20000;
  for (int i = 0; i < kSteps; ++i) {
    const double a = -alpha + (i + 0.5) * 2 * alpha / kSteps;
    const double stress = at_surface * std::sin(a) / std::sin(alpha);
    sideways += stress * std::sin(a) * rho_mm * 2 * alpha / kSteps;
  }

  EXPECT_NEAR(sideways, 1, 1e-7);
}

TEST(WedgeStress, YieldsToADepthInProportionToTheLoad) {
  EXPECT_NEAR(yielded_zone_um({15}, 1, 2150), 9.7, 0.05);
  EXPECT_NEAR(beam_stress_mpa({20}, 1, 10) / beam_stress_mpa({15}, 1, 10), 0.54, 0.005);
}

TEST(WedgeStress, BendsTheTipAsNumericalIntegrationSays) {
  EXPECT_NEAR(tip_deflection_um({.angle = {15}, .line_load_newton_per_mm = 1}), 2.058, 0.0005);
  EXPECT_NEAR(tip_deflection_um({.angle = {15}, .line_load_newton_per_mm = 1, .cut_off_um = 5}),
              1.448,
              0.0005);
}

TEST(LineContact, AgreesWithHandWorkedValues) {
  const double steels = contact_modulus_mpa({}, {});
  EXPECT_NEAR(steels, 111900, 50);
  EXPECT_NEAR(line_contact(1, 1, steels).half_width_um, 0.107, 0.0005);
  EXPECT_NEAR(line_contact(1, 1, steels).largest_pressure_mpa, 5970, 5);
  EXPECT_NEAR(line_contact(10, 1, steels).half_width_um, 0.337, 0.0005);
  EXPECT_NEAR(line_contact(10, 1, steels).largest_pressure_mpa, 1890, 5);
  const double board = contact_modulus_mpa({}, {.modulus_mpa = 1000, .poisson_ratio = 0.4});
  EXPECT_NEAR(line_contact(1, 1, board).half_width_um, 1.04, 0.005);
  EXPECT_NEAR(line_contact(1, 1, board).largest_pressure_mpa, 610, 5);
}

// Half an ellipse of pressure over the contact's width: (pi / 2) b p0.
TEST(LineContact, CarriesTheLoad) {
  const LineContact contact = line_contact(3, 0.7, 1e5);

  EXPECT_NEAR(std::numbers::pi / 2 * contact.half_width_um * 1e-3 * contact.largest_pressure_mpa,
              0.7,
              1e-12);
}

// Table of the frictionless result, worked out separately.
TEST(SlicePush, AgreesWithTheTableOfFrictionlessSlicing) {
  struct Row {
    double xi, across, along, together;
  };
  for (const Row& row : {Row{0, 1, 0, 1},
                         Row{1, 0.5, 0.5, 0.7071},
                         Row{2, 0.2, 0.4, 0.4472},
                         Row{3, 0.1, 0.3, 0.3162},
                         Row{5, 0.03846, 0.1923, 0.1961},
                         Row{10, 0.009901, 0.09901, 0.09950}}) {
    const SlicingForce force = slicing_force(row.xi);
    EXPECT_NEAR(force.across_ratio, row.across, 5e-5);
    EXPECT_NEAR(force.along_ratio, row.along, 5e-5);
    EXPECT_NEAR(force.together_ratio, row.together, 5e-5);
  }
}

TEST(SlicePush, NeedsTwoAndFourNewtonAtTwiceTheSpeedAlong) {
  const double pushing = pushing_force_newton(1000, 10);

  EXPECT_NEAR(pushing * slicing_force(2).across_ratio, 2, 1e-12);
  EXPECT_NEAR(pushing * slicing_force(2).along_ratio, 4, 1e-12);
}

// Work per length across: F_across + xi F_along = R w, whatever the path.
TEST(SlicePush, DoesTheWorkOfPartingAtAnySpeed) {
  for (const double xi : {0.3, 1.7, 8.0}) {
    EXPECT_NEAR(slicing_force(xi).across_ratio + xi * slicing_force(xi).along_ratio, 1, 1e-14);
  }
}

}  // namespace
}  // namespace keenfall::wear
