#include "blunting/curves/wear_and_hits.h"

#include "base/require.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace keenfall::blunting {

namespace {

void require_a_curve(const WearAndHits& curve) {
  base::require(!curve.wear_scale_cuts || *curve.wear_scale_cuts > 0, "a wear scale is above 0");
  base::require(curve.hit_slope_per_cut >= 0, "hits do not sharpen");
  base::require(curve.hit_saturation_per_cut >= 0, "saturation is not negative");
}

double from_wear(const WearAndHits& curve, double cuts) {
  return curve.wear_scale_cuts ? std::sqrt(1 + cuts / *curve.wear_scale_cuts) : 1;
}

double from_hits(const WearAndHits& curve, double cuts) {
  const double saturation = curve.hit_saturation_per_cut;
  if (saturation == 0) return curve.hit_slope_per_cut * cuts;
  return curve.hit_slope_per_cut / saturation * -std::expm1(-saturation * cuts);
}

double most_from_hits(const WearAndHits& curve) {
  if (curve.hit_slope_per_cut == 0) return 0;
  if (curve.hit_saturation_per_cut == 0) return std::numeric_limits<double>::infinity();
  return curve.hit_slope_per_cut / curve.hit_saturation_per_cut;
}

// Cuts after which one of the two alone has brought the curve to the level: none lie beyond.
double cuts_that_suffice(const WearAndHits& curve, double level) {
  double most = std::numeric_limits<double>::infinity();
  if (curve.wear_scale_cuts) most = *curve.wear_scale_cuts * (level * level - 1);
  if (most_from_hits(curve) > level - 1) {
    const double saturation = curve.hit_saturation_per_cut;
    const double alone = saturation == 0
                             ? (level - 1) / curve.hit_slope_per_cut
                             : -std::log1p(-(level - 1) / most_from_hits(curve)) / saturation;
    most = std::min(most, alone);
  }
  return most;
}

}  // namespace

double bluntness(const WearAndHits& curve, double cuts) {
  require_a_curve(curve);
  base::require(cuts >= 0, "cuts are not negative");
  return from_wear(curve, cuts) + from_hits(curve, cuts);
}

double bluntness_slope(const WearAndHits& curve, double cuts) {
  require_a_curve(curve);
  base::require(cuts >= 0, "cuts are not negative");
  const double wear =
      curve.wear_scale_cuts ? 0.5 / (*curve.wear_scale_cuts * from_wear(curve, cuts)) : 0;
  return wear + curve.hit_slope_per_cut * std::exp(-curve.hit_saturation_per_cut * cuts);
}

std::optional<double> cuts_to_level(const WearAndHits& curve, double level) {
  require_a_curve(curve);
  base::require(level > 1, "a level is above the start");
  double above = cuts_that_suffice(curve, level);
  if (!std::isfinite(above)) return std::nullopt;
  // The curve rises and bends down, so Newton's steps from below never overshoot.
  double cuts = 0;
  constexpr int kMostSteps = 200;
  for (int step = 0; step < kMostSteps; ++step) {
    const double missing = level - bluntness(curve, cuts);
    const double next = std::min(above, cuts + missing / bluntness_slope(curve, cuts));
    if (!(next > cuts)) break;
    cuts = next;
  }
  return cuts;
}

}  // namespace keenfall::blunting
