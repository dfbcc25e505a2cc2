// One edge's life through a schedule: what happens in which order.
//
// Cut by cut: the lands wear, particles hit, patches are twisted, folds that are due fall off.
#pragma once

#include "wear/edge_events.h"
#include "wear/lazy_edge.h"
#include "wear/simulated_edge.h"

#include <cstdint>
#include <span>

namespace keenfall::wear {

struct LifeOfEdge {
  base::Seed seed;
  std::uint64_t run = 0;
};

[[nodiscard]] SimulatedEdge lived(const ApexSimulation& simulation,
                                  std::span<const Stretch> stretches,
                                  const LifeOfEdge& life);

}  // namespace keenfall::wear
