// Checkpoints for somebody who says little: what half keenness is expected, if any, and whether the
// stock carries grit.
#pragma once

#include "base/result.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::planning {

struct CheckpointsAsked {
  std::optional<double> half_keenness_cuts;  // expected; absent: not known
  bool gritty = false;               // edges fade within some ten cuts, and runs scatter more
  std::optional<double> stop_level;  // times the start
  bool whole_cuts = true;            // else a length or a time is counted
};

struct SuggestedCheckpoints {
  std::vector<double> cuts;
  std::string why;

  bool operator==(const SuggestedCheckpoints&) const = default;
};

// The list of common practice where no half keenness is expected, else the fewest that will do
// (checkpoints.h). Refuses as fewest_checkpoints does.
[[nodiscard]] base::Result<SuggestedCheckpoints> suggested_checkpoints(
    const CheckpointsAsked& asked);

}  // namespace keenfall::planning
