// A second, quicker way to how long edges last by one test: numerical integration, no sampler.
//
// The same model and priors as the sampled posterior (time_density.h). Given the scatters and the
// effects of blocks and specimens, each arm's median is a grid of its own. Scatters go along grids;
// effects are spread evenly over a normal about their mode, each place weighed by what the model
// says of it. Each medium is taken by itself: what a specimen or a block scatter shows in another
// is not used. Method page: docs/methods/edge-lives.md
#pragma once

#include "blunting/times/time_data.h"
#include "blunting/times/time_fit.h"

#include <vector>

namespace keenfall::blunting {

// As TimeData::groups.arms; kQuickDraws each. The same data give the same draws.
[[nodiscard]] std::vector<ArmTimes> quick_times(const TimeData& data);

// The same with the scatter from run to run, in the shape of the full fit and always usable. The
// draws stand in another order: any stretch of them is like the whole.
[[nodiscard]] TimeFit quick_posterior(const TimeData& data);

}  // namespace keenfall::blunting
