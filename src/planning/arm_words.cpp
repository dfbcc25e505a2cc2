#include "planning/arm_words.h"

#include <algorithm>

namespace keenfall::planning {

std::vector<std::string> words_of_arms(std::span<const trials::PlannedArm> arms,
                                       const materials::ToldIn& told) {
  const bool edges_differ = std::ranges::any_of(
      arms, [&arms](const trials::PlannedArm& arm) { return arm.edge != arms.front().edge; });
  std::vector<std::string> words;
  for (const trials::PlannedArm& arm : arms) {
    words.push_back(arm.blade);
    if (!edges_differ) continue;
    const std::string edge = in_words(arm.edge, told);
    words.back() += " (" + (edge.empty() ? "edge not said" : edge) + ")";
  }
  return words;
}

std::vector<std::string> words_of_cuttings(std::span<const trials::PlannedCutting> cuttings) {
  std::vector<std::string> words;
  for (const trials::PlannedCutting& cutting : cuttings) {
    const auto has_its_medium = [&cutting](const trials::PlannedCutting& other) {
      return other.medium.name == cutting.medium.name;
    };
    words.push_back(cutting.medium.name);
    if (std::ranges::count_if(cuttings, has_its_medium) < 2) continue;
    for (const std::string& said : {cutting.medium.condition, in_words(cutting.method)}) {
      if (!said.empty()) words.back() += ", " + said;
    }
  }
  return words;
}

}  // namespace keenfall::planning
