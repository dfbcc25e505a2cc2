// The table of arms: how long each blade lasts in each medium, how it starts, how much runs
// scatter.
#pragma once

#include "telling/table.h"
#include "verdicts/judgement.h"

namespace keenfall::telling {

// A line for each group of arms (arm_groups.h) with its arms below it; no columns where there are
// no arms.
[[nodiscard]] Table arms_table(const verdicts::Judgement& judgement);

}  // namespace keenfall::telling
