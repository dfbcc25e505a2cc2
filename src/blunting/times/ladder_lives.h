// How long edges lasted at one rung of the pass ladder, where each try says which rung was reached.
//
// A checkpoint is passed when more than half of its tries reached the rung (their median; a tie is
// a fail). The edge lasted to the last passed checkpoint before its first failure; that it passed
// again later is remarked on.
#pragma once

#include "trials/trial.h"

#include <optional>
#include <string>
#include <vector>

namespace keenfall::blunting {

struct LadderLife {
  double lasted_cuts = 0;                // 0: not known to have passed after the start
  std::optional<double> failed_by_cuts;  // absent: never failed
  std::vector<std::string> remarks;
};

// Absent where the run has no reading of a pass ladder that is not struck.
[[nodiscard]] std::optional<LadderLife> ladder_life(const trials::Trial& trial,
                                                    const trials::Run& run,
                                                    int rung);

// The rung (1 to 9) that most runs were seen to pass and then fail; among those, the one that most
// were seen to fail; among those, the keenest. Absent where no run has a pass ladder.
[[nodiscard]] std::optional<int> default_rung(const trials::Trial& trial);

}  // namespace keenfall::blunting
