// The chances of a plan in words, rounded as they are sure.
#pragma once

#include "planning/chances.h"
#include "planning/runs_needed.h"

#include <string>

namespace keenfall::planning {

// "if both last equally long", "if one lasts twice as long", "if one lasts 1.5 times as long". Of a
// ratio below 1 the same as of its reciprocal.
[[nodiscard]] std::string if_true(double ratio);

// "Of 100 such trials about 78 would settle it if both last equally long, 99 if one lasts twice as
// long." Nothing where no chances are known. in_what: "In sisal", where there are several.
[[nodiscard]] std::string in_words(const PlanChances& chances, const std::string& in_what = {});

// "6 runs each would settle it in four of five such trials if one lasts 1.5 times as long."
[[nodiscard]] std::string in_words(const RunsNeeded& needed);

}  // namespace keenfall::planning
