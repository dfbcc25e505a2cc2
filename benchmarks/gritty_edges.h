// The apex simulator's benchmark: edges of AISI A11, 15 degrees per side, fine finish, 20 mm in
// segments of 4 um, cut in gritty matting and read before the first cut and after the last.
#pragma once

#include "wear/simulated_edge.h"

namespace keenfall::benchmarks {

constexpr int kEdges = 100;
constexpr long kEdgeCuts = 1000;

[[nodiscard]] wear::ApexSimulation gritty_edges(long cuts);

}  // namespace keenfall::benchmarks
