// The arms of a plan, from what a person wants to compare.
//
// Crossed: every blade with every edge in every cutting, so that blades and edges can be told
// apart. Best against best: each blade with the edge that suits it; then blade and edge are one
// thing, and no trial can say which of the two it was. Angles per side, in degrees.
// Refused: nothing to compare, a blade or an edge named twice, more arms than anybody cuts.
#pragma once

#include "base/result.h"
#include "trials/plan.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::planning {

struct ArmChoices {
  std::vector<std::string> blades;  // by name
  std::vector<trials::EdgePreparation> edges;
  std::size_t cuttings = 1;  // how many Plan::cuttings there are
};

inline constexpr std::size_t kMostArms = 200;

// Ordered by cutting, then blade, then edge.
[[nodiscard]] base::Result<std::vector<trials::PlannedArm>> crossed_arms(const ArmChoices& choices);

// choices.edges: one for each blade, in the order of the blades; two blades may have the same.
[[nodiscard]] base::Result<std::vector<trials::PlannedArm>> best_against_best(
    const ArmChoices& choices);

// What an edge may vary in; an empty list leaves that unsaid.
struct EdgeChoices {
  std::vector<trials::PerSideAngle> bevel_angles;
  std::vector<trials::PerSideAngle> apex_angles;  // of the micro-bevel
  std::vector<std::string> finishes;
  std::optional<double> thickness_behind_edge_mm;
};

// Every angle with every finish. Refused: more edges than anybody compares, which is kMostArms.
[[nodiscard]] base::Result<std::vector<trials::EdgePreparation>> crossed_edges(
    const EdgeChoices& choices);

}  // namespace keenfall::planning
