// At which look of a plan the runs of a family of arms stand, and what that means for its answers.
#pragma once

#include "base/seed.h"
#include "verdicts/judgement.h"

#include <span>
#include <string>

namespace keenfall::verdicts {

// runs: of each arm compared. planned: runs of every arm at each look, rising; not empty.
[[nodiscard]] LookReport look_report(std::span<const int> runs,
                                     std::span<const int> planned,
                                     base::Seed seed);

// "Looked at after 6 runs each, look 2 of the 3 planned (3, 6 and 9): ..."
[[nodiscard]] std::string in_words(const LookReport& look);

}  // namespace keenfall::verdicts
