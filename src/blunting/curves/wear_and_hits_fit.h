// The curve of wear and hits that lies nearest to a blunting curve that was computed or measured.
//
// In: points of one edge (or of the mean of many), cuts >= 0 and bluntness > 0 in any unit, rising
// cuts, at least five of them. Out: the curve, the start in the same unit, and how far the points
// lie from it. Least squares of logs; slope and saturation, and the wear scale where it is not
// given, are held weakly (sd 2 in logs) about what the points' own range suggests, so that a curve
// that says nothing of one of them has an end.
//
// A good fit is no attribution: with the wear scale free, what hits add is readily taken for wear
// (docs/methods/wear-and-hits.md). Whoever wants shares gives `wear_scale_cuts` from elsewhere,
// such as the same edge in a clean medium.
#pragma once

#include "base/result.h"
#include "blunting/curves/wear_and_hits.h"

#include <optional>
#include <span>

namespace keenfall::blunting {

struct CurvePoint {
  double cuts = 0;
  double bluntness = 0;

  bool operator==(const CurvePoint&) const = default;
};

// What is known of the wear from elsewhere.
struct KnownWear {
  std::optional<double> scale_cuts;  // absent: nothing wears

  bool operator==(const KnownWear&) const = default;
};

struct WearAndHitsFit {
  WearAndHits curve;
  double start = 0;  // bluntness at 0 cuts
  bool wear_was_known = false;
  double root_mean_square_misfit = 0;  // of log bluntness: 0.01 is about 1 %
  bool converged = false;

  bool operator==(const WearAndHitsFit&) const = default;
};

// `wear` absent: its scale is sought. Refuses fewer than five points, cuts that do not rise and
// bluntness that is not above 0.
[[nodiscard]] base::Result<WearAndHitsFit> fit_wear_and_hits(
    std::span<const CurvePoint> points, const std::optional<KnownWear>& wear = std::nullopt);

}  // namespace keenfall::blunting
