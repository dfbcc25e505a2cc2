// A second family of blunting curves, for what physics computes rather than for verdicts: wear that
// goes on for ever and hits that first come in proportion to the cuts.
//
//   b(x) / b0 = sqrt(1 + x / tau_w) + (S / c) (1 - exp(-c x))
//
// x cuts. tau_w: wear scale, the cuts in which wear alone brings the reading to sqrt(2) times its
// start (to twice in 3 tau_w): Archard wear of a wedge under a steady line load. S: the rise per
// cut, in starts, that hits of hard particles add to a fresh edge. c: how fast further hits fall on
// places already hit; 0 where none do (b rises by S x). Ours, from the mechanics in
// docs/methods/apex.md.
//
// The three shares of it (wear, hits, saturation) cannot be told apart from readings alone:
// docs/methods/wear-and-hits.md. So what is told of a curve is told with a known tau_w; a fit that
// seeks it too can be asked for, and shows how it goes wrong.
#pragma once

#include <optional>

namespace keenfall::blunting {

struct WearAndHits {
  // > 0; absent: no wear.
  std::optional<double> wear_scale_cuts;
  double hit_slope_per_cut = 0;       // S >= 0
  double hit_saturation_per_cut = 0;  // c >= 0

  bool operator==(const WearAndHits&) const = default;
};

// b(x) / b0, at least 1; cuts >= 0.
[[nodiscard]] double bluntness(const WearAndHits& curve, double cuts);

// d/dx of it, per cut.
[[nodiscard]] double bluntness_slope(const WearAndHits& curve, double cuts);

// Cuts at which b / b0 = level > 1; none where the curve never gets there.
[[nodiscard]] std::optional<double> cuts_to_level(const WearAndHits& curve, double level);

}  // namespace keenfall::blunting
