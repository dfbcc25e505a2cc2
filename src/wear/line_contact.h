// A round apex pressed straight onto something flat: Hertz's line contact.
//
// In: the apex radius in um, a line load in N per mm, both bodies' moduli in MPa. Out: half the
// contact's width in um and the largest pressure in MPa. Elastic only: pressures beyond some 1.6 to
// 1.8 times the yield stress mean that the apex flattens.
// Source: Hertz (Johnson, Contact Mechanics, from memory).
#pragma once

namespace keenfall::wear {

struct ElasticBody {
  double modulus_mpa = 205000;
  double poisson_ratio = 0.29;
};

// 1 / E* = (1 - nu_a^2) / E_a + (1 - nu_b^2) / E_b.
[[nodiscard]] double contact_modulus_mpa(const ElasticBody& a, const ElasticBody& b);

struct LineContact {
  double half_width_um = 0;
  double largest_pressure_mpa = 0;
};
[[nodiscard]] LineContact line_contact(double apex_radius_um,
                                       double line_load_newton_per_mm,
                                       double contact_modulus_mpa);

}  // namespace keenfall::wear
