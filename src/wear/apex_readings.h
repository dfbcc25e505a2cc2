// What would be read on an edge, and what a microscope would see.
//
//   bluntness of a segment   b = w + chi r   (land and a share of the fold), in um
//   push reading   mean of b, weighted by exp((z - mean z) / push reach)
//   slice reading  1 / mean of (1 + c_s |dz/dx|) / b, weighted by exp((z - mean z) / slice reach)
//   force per mm   F = R_f + sigma_f b + p h (t + mu), with b the push reading
// The push reach says how far into chips the thread or stock reaches. A slice meets the keenest
// spots and climbs slopes, so the two rank damaged edges unlike each other: say which one is meant.
// Source: derived on docs/methods/apex.md; the constants are guesses or calibrated (presets).
#pragma once

#include "wear/edge_line.h"
#include "wear/wedge.h"

namespace keenfall::wear {

struct ReadingRules {
  double fold_share = 0.5;  // chi
  double push_reach_um = 30;
  double slope_gain = 1;  // c_s
  double slice_reach_um = 15;

  bool operator==(const ReadingRules&) const = default;
};

// Guesses throughout: only ratios of forces should be looked at.
struct CutForce {
  double separation_newton_per_mm = 0.1;        // R_f, of an ideal edge
  double bluntness_newton_per_mm_per_um = 0.1;  // sigma_f
  double flank_pressure_mpa = 0.2;              // p
  double flank_height_mm = 1;                   // h
  double friction = 0.3;                        // mu

  bool operator==(const CutForce&) const = default;
};

[[nodiscard]] double push_reading_um(const EdgeLine& edge, const ReadingRules& rules);
[[nodiscard]] double slice_reading_um(const EdgeLine& edge, const ReadingRules& rules);
[[nodiscard]] double force_newton_per_mm(double push_um, const Wedge& wedge, const CutForce& force);

struct DamageSummary {
  double mean_land_um = 0;
  double recession_um = 0;  // mean fall of the land since the start
  double chips_per_mm = 0;  // stretches of segments chipped deeper than the visible depth
  double deepest_chip_um = 0;
  double rolled_fraction = 0;  // of the segments, that carry a fold

  bool operator==(const DamageSummary&) const = default;
};
// Start heights average 0 over whole teeth; the start's mean is taken off exactly.
[[nodiscard]] DamageSummary damage_summary(const EdgeLine& edge,
                                           const EdgeLine& start,
                                           double visible_chip_um);

}  // namespace keenfall::wear
