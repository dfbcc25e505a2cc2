// The table of arms: how long each blade lasts in each medium, how it starts, how much runs
// scatter.
#pragma once

#include "cli/look.h"
#include "verdicts/judgement.h"

#include <string>

namespace keenfall::cli {

// Ends in a newline; empty when there are no arms.
[[nodiscard]] std::string arms_table(const verdicts::Judgement& judgement, const Look& look);

}  // namespace keenfall::cli
