// A second, quicker way to how long edges last by one test: integration on a grid.
//
// The same model and priors as the sampled posterior (time_density.h). Without blocks and specimens
// the arms of a medium have nothing in common but the scatter from run to run: on a grid of
// scatters, each arm's median is a grid of its own. No sampler, no chance. Method page:
// docs/methods/edge-lives.md
#pragma once

#include "blunting/times/time_data.h"
#include "blunting/times/time_fit.h"

#include <optional>
#include <vector>

namespace keenfall::blunting {

// As TimeData::groups.arms; kQuickDraws each. Absent where blocks or specimens tie the arms.
[[nodiscard]] std::optional<std::vector<ArmTimes>> quick_times(const TimeData& data);

}  // namespace keenfall::blunting
