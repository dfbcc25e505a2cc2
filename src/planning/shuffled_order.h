// In which order runs are cut: blocks, each with one run of every arm, shuffled inside.
//
// What drifts over days (lots, stones, hands, weather) then meets every arm alike, and the house
// blade, being an arm, stands in every block. A block's order comes from the plan's seed and the
// block's number alone: a plan that grows keeps the order of the blocks it has. Where a blade has
// several specimens they are taken in turn, one a block.
// Refused: no arms, no runs, a house blade that is no arm, more runs than anybody cuts.
#pragma once

#include "base/result.h"
#include "trials/blade.h"
#include "trials/plan.h"

#include <span>
#include <vector>

namespace keenfall::planning {

inline constexpr int kMostRunsEach = 1000;
inline constexpr std::size_t kMostRuns = 20'000;

// Plan::runs as they should be: Plan::runs_each blocks. blades: where specimens are found by the
// blade's name; a blade that is not among them has one piece, unnamed.
[[nodiscard]] base::Result<std::vector<trials::PlannedRun>> shuffled_order(
    const trials::Plan& plan, std::span<const trials::Blade> blades);

}  // namespace keenfall::planning
