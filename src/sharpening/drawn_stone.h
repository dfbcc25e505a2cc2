// A stone as its draws take it: all its constants with their ranges, and the rates they make.
//
// Private to this folder.
#pragma once

#include "sharpening/resharpening.h"

#include <cstdint>
#include <vector>

namespace keenfall::sharpening {

struct DrawnStone {
  std::uint64_t number = 0;  // among those asked for; 0: the one on which passes were counted
  std::vector<RemovalEstimate> constants;
};

[[nodiscard]] DrawnStone drawn_stone(const ResharpeningQuestion& question,
                                     const Stone& stone,
                                     std::uint64_t number);

// k0 from the count, where there is one on this stone.
[[nodiscard]] CuttingRate rate_of(const ResharpeningQuestion& question,
                                  const DrawnStone& stone,
                                  const RemovalConstants& constants);

// One per draw: the same shared draws for every stone, and a stream of its own beside them.
[[nodiscard]] std::vector<CuttingRate> drawn_rates(const ResharpeningQuestion& question,
                                                   const DrawnStone& stone);

[[nodiscard]] base::Result<Effort> effort(const CuttingRate& rate,
                                          double steel_mm3,
                                          const WayOfWorking& work);

[[nodiscard]] base::Result<SteelToRemove> steel_to_remove(const EdgeToSharpen& edge);

[[nodiscard]] double volume_mm3(const SteelToRemove& steel, const EdgeToSharpen& edge);

}  // namespace keenfall::sharpening
