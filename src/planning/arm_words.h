// What the arms of a plan are called, as shortly as they can be told apart within one cutting.
#pragma once

#include "trials/plan.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::planning {

// One for each arm: "A", or where not all arms have one edge, "A (17° per side)", "A (edge not
// said)".
[[nodiscard]] std::vector<std::string> words_of_arms(std::span<const trials::PlannedArm> arms);

}  // namespace keenfall::planning
