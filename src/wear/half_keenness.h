// How long a simulated edge lasts: the cuts at which a reading stands at a multiple of its start.
#pragma once

#include "wear/simulated_edge.h"

#include <optional>

namespace keenfall::wear {

enum class ApexReading { push, slice };

// Linear between the cuts that were read, the first of which is the start; level 2 is half
// keenness. None: the level was not reached.
[[nodiscard]] std::optional<double> cuts_to_level(const SimulatedEdge& edge,
                                                  ApexReading reading,
                                                  double level = 2);

// 0 and then whole cuts, each about so many times the last: where to read for a half keenness.
[[nodiscard]] std::vector<long> rising_cuts(long last, double step_ratio = 1.1);

}  // namespace keenfall::wear
