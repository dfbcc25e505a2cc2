#include "wear/abrasive_wear.h"

#include <cmath>
#include <limits>

namespace keenfall::wear {

double squared_land_growth_um2_per_cut(const AbrasiveWear& wear, const Wedge& wedge) {
  const double area_mm2 =
      wear.wear_rate_mm3_per_newton_metre * wear.line_load_newton_per_mm * wear.sliding_m_per_cut;
  return 4 * wedge.tangent * area_mm2 * 1e6;
}

double wear_life_cuts(const AbrasiveWear& wear, const Wedge& wedge, double start_land_um) {
  const double growth = squared_land_growth_um2_per_cut(wear, wedge);
  if (growth == 0) return std::numeric_limits<double>::infinity();
  return start_land_um * start_land_um / growth;
}

double worn_land_um(const AbrasiveWear& wear,
                    const Wedge& wedge,
                    double start_land_um,
                    double cuts) {
  const double squared = start_land_um * start_land_um;
  const WearDose dose{.growth_um2_per_cut = squared_land_growth_um2_per_cut(wear, wedge),
                      .load_growth_exponent = wear.load_growth_exponent,
                      .first_squared_land_um2 = squared};
  return std::sqrt(squared + dose_um2(dose, squared, cuts));
}

double dose_um2(const WearDose& dose, double squared_land_um2, double cuts) {
  if (dose.load_growth_exponent == 0) return dose.growth_um2_per_cut * cuts;
  // W' = C (W / W0)^(m/2), so W^(1 - m/2) grows evenly.
  const double power = 1 - dose.load_growth_exponent / 2;
  const double start = std::pow(squared_land_um2, power);
  const double grown =
      power * dose.growth_um2_per_cut * cuts * std::pow(dose.first_squared_land_um2, power - 1);
  return std::pow(start + grown, 1 / power) - squared_land_um2;
}

}  // namespace keenfall::wear
