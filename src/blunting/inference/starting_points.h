// Where the chains start, and how centred the runs are sampled: from a least-squares curve per run.
#pragma once

#include "blunting/inference/blunting_density.h"

#include <vector>

namespace keenfall::blunting {

struct StartingPoints {
  Centring centring;
  // Per run, by least squares at the prior's middle shape, weakly pulled to the prior centres.
  std::vector<double> run_start;
  std::vector<double> run_half;
  double checkpoint_sd = 0.1;  // of a checkpoint's centre about the run's curve
};

[[nodiscard]] StartingPoints starting_points(const BluntingData& data, const ModelSpec& spec);

// One point of the density's space: levels at the least-squares curves, scales at what those
// suggest.
[[nodiscard]] std::vector<double> starting_point(const StartingPoints& points,
                                                 const BluntingDensity& density);

}  // namespace keenfall::blunting
