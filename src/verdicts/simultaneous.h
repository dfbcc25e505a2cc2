// Intervals that hold together for a whole family of comparisons.
//
// Each comparison's interval is stretched about its median, on either side in proportion to its own
// single interval, until all of the family hold at once in 90 % (95 %) of the joint posterior: the
// band of the largest standardised deviation (Besag, Green, Higdon & Mengersen 1995, section 6,
// with sides scaled apart). A family of one keeps its single interval.
#pragma once

#include "verdicts/verdict.h"

#include <span>
#include <vector>

namespace keenfall::verdicts {

// log_ratios: one vector of posterior draws per comparison, drawn jointly, all of one length.
// Returns bounds of the ratios, in the order given.
[[nodiscard]] std::vector<RatioBounds> simultaneous_bounds(
    std::span<const std::vector<double>> log_ratios);

}  // namespace keenfall::verdicts
