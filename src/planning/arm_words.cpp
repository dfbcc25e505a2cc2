#include "planning/arm_words.h"

#include <algorithm>

namespace keenfall::planning {

std::vector<std::string> words_of_arms(std::span<const trials::PlannedArm> arms) {
  const bool edges_differ = std::ranges::any_of(
      arms, [&arms](const trials::PlannedArm& arm) { return arm.edge != arms.front().edge; });
  std::vector<std::string> words;
  for (const trials::PlannedArm& arm : arms) {
    words.push_back(arm.blade);
    if (!edges_differ) continue;
    const std::string edge = in_words(arm.edge);
    words.back() += " (" + (edge.empty() ? "edge not said" : edge) + ")";
  }
  return words;
}

}  // namespace keenfall::planning
