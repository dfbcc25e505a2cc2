// Abrasive wear of the apex: Archard's law on a wedge under a line load.
//
//   w^2 = w0^2 + 4 t k P s x,    wear life tau_w = w0^2 / (4 t k P s),    half keenness = 3 tau_w
//
// with t the tangent of the angle per side, k the wear rate, P the line load, s the sliding per cut
// and x the cuts. Where the hand presses harder as the edge dulls, P = P0 (w / w0)^m:
//   w / w0 = (1 + (1 - m/2) x / tau_w)^(1 / (2 - m)).
// Source: Archard's law (textbooks, from memory) on a wedge, derived on docs/methods/apex.md.
#pragma once

#include "wear/wedge.h"

namespace keenfall::wear {

struct AbrasiveWear {
  double wear_rate_mm3_per_newton_metre = 0;  // of this steel in this medium
  double line_load_newton_per_mm = 1;
  double sliding_m_per_cut = 0.02;
  double load_growth_exponent = 0;  // m, 0 to 1; 0: constant load
  // How far the medium gives way: segments that stand this much higher carry e times the load.
  double load_share_compliance_um = 15;

  bool operator==(const AbrasiveWear&) const = default;
};

// 4 t k P s: growth of the squared land per cut at the first load, in um^2.
[[nodiscard]] double squared_land_growth_um2_per_cut(const AbrasiveWear& wear, const Wedge& wedge);

// tau_w, in cuts; infinite where nothing wears.
[[nodiscard]] double wear_life_cuts(const AbrasiveWear& wear,
                                    const Wedge& wedge,
                                    double start_land_um);

// The land of an even edge after so many cuts.
[[nodiscard]] double worn_land_um(const AbrasiveWear& wear,
                                  const Wedge& wedge,
                                  double start_land_um,
                                  double cuts);

// How the mean squared land (um^2) of an edge grows in some cuts: what one share of one takes up.
struct WearDose {
  double growth_um2_per_cut = 0;  // at the first load
  double load_growth_exponent = 0;
  double first_squared_land_um2 = 1;  // where the load is the first load
};
[[nodiscard]] double dose_um2(const WearDose& dose, double squared_land_um2, double cuts);

}  // namespace keenfall::wear
