// Where the chains start, and how centred the runs are sampled: from a least-squares curve per run.
#pragma once

#include "base/seed.h"
#include "blunting/inference/blunting_density.h"

#include <vector>

namespace keenfall::blunting {

struct StartingPoints {
  Centring centring;
  // Per run, by least squares at the prior's middle shape, weakly pulled to the prior centres.
  std::vector<double> run_start;
  std::vector<double> run_half;
};

[[nodiscard]] StartingPoints starting_points(const BluntingData& data, const ModelSpec& spec);

// A jittered start on the sampler's scale; another for every chain.
[[nodiscard]] std::vector<double> jittered_start(const StartingPoints& points,
                                                 const BluntingData& data,
                                                 const BluntingDensity& density,
                                                 base::Seed seed,
                                                 std::uint64_t chain);

}  // namespace keenfall::blunting
