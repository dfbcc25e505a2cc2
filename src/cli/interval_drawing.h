// The ratios of a medium drawn one below another on one log axis: where they lie against 1 and
// against the worth-it band, in which a difference is too small to act on.
#pragma once

#include "cli/look.h"
#include "telling/arm_groups.h"
#include "verdicts/judgement.h"

#include <string>

namespace keenfall::cli {

// At most this many rows; the settled and the largest come first.
inline constexpr std::size_t kMostRatioRows = 12;

// Ends in a newline; empty when there is nothing to draw.
[[nodiscard]] std::string ratios_drawn(const verdicts::Judgement& judgement, const Look& look);

}  // namespace keenfall::cli
