#include "wear/wedge_stress.h"

#include <cmath>
#include <numbers>

namespace keenfall::wear {

namespace {

double in_radians(trials::PerSideAngle angle) { return angle.deg * std::numbers::pi / 180; }

}  // namespace

double beam_stress_mpa(trials::PerSideAngle angle,
                       double line_load_newton_per_mm,
                       double distance_um) {
  const double tangent = std::tan(in_radians(angle));
  return 3 * line_load_newton_per_mm / (2 * distance_um * 1e-3 * tangent * tangent);
}

double sideways_stress_mpa(trials::PerSideAngle angle,
                           double line_load_newton_per_mm,
                           double distance_um) {
  const double a = in_radians(angle);
  const double rho_mm = distance_um * 1e-3 / std::cos(a);
  return 2 * line_load_newton_per_mm * std::sin(a) / (rho_mm * (2 * a - std::sin(2 * a)));
}

double axial_stress_mpa(trials::PerSideAngle angle,
                        double line_load_newton_per_mm,
                        double distance_um) {
  const double a = in_radians(angle);
  return 2 * line_load_newton_per_mm / (distance_um * 1e-3 * (2 * a + std::sin(2 * a)));
}

double yielded_zone_um(trials::PerSideAngle angle,
                       double line_load_newton_per_mm,
                       double yield_stress_mpa) {
  const double tangent = std::tan(in_radians(angle));
  return 3 * line_load_newton_per_mm * 1e3 / (2 * yield_stress_mpa * tangent * tangent);
}

double tip_deflection_um(const BentTip& tip) {
  const double k = 2 * std::tan(in_radians(tip.angle));
  const double from = tip.cut_off_um / tip.held_at_um;
  const double shape = -std::log(from) - 2 * (1 - from) + (1 - from * from) / 2;
  return 12 * tip.line_load_newton_per_mm / (tip.modulus_mpa * k * k * k) * shape * 1e3;
}

}  // namespace keenfall::wear
