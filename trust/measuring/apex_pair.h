// Trials of two blades cut by the apex simulator, and how long their edges truly last.
#pragma once

#include "trust/measuring/cell_trial.h"

#include <cstdint>

namespace keenfall::trust {

// At TrueRatio::one both blades are of the pair's first steel; at the margin of its two steels, and
// the margin asked about is their true ratio.
[[nodiscard]] CellTrial apex_trial(const ApexPair& pair, TrueRatio ratio, std::uint64_t seed);

}  // namespace keenfall::trust
