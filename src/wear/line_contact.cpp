#include "wear/line_contact.h"

#include <cmath>
#include <numbers>

namespace keenfall::wear {

namespace {

double give(const ElasticBody& body) {
  return (1 - body.poisson_ratio * body.poisson_ratio) / body.modulus_mpa;
}

}  // namespace

double contact_modulus_mpa(const ElasticBody& a, const ElasticBody& b) {
  return 1 / (give(a) + give(b));
}

LineContact line_contact(double apex_radius_um,
                         double line_load_newton_per_mm,
                         double contact_modulus_mpa) {
  using std::numbers::pi;
  const double half_width_mm =
      std::sqrt(4 * line_load_newton_per_mm * apex_radius_um * 1e-3 / (pi * contact_modulus_mpa));
  return {.half_width_um = half_width_mm * 1e3,
          .largest_pressure_mpa = 2 * line_load_newton_per_mm / (pi * half_width_mm)};
}

}  // namespace keenfall::wear
