// The edge that was prepared: angles always per side, finish, thickness behind the edge.
//
// Two edges that differ in any recorded field are two edges: nothing pools them silently.
// Angles are degrees per side (a 17 degree edge measures 34 degrees inclusive).
#pragma once

#include "materials/told_in.h"

#include <optional>
#include <string>

namespace keenfall::trials {

struct InclusiveAngle {
  double deg = 0;  // 0 < deg < 180

  auto operator<=>(const InclusiveAngle&) const = default;
};

// A strong type because a per-side angle taken for an inclusive one halves the edge unnoticed.
struct PerSideAngle {
  double deg = 0;  // 0 < deg < 90

  auto operator<=>(const PerSideAngle&) const = default;
};

[[nodiscard]] constexpr InclusiveAngle inclusive(PerSideAngle angle) { return {2 * angle.deg}; }
[[nodiscard]] constexpr PerSideAngle per_side(InclusiveAngle angle) { return {angle.deg / 2}; }

struct EdgePreparation {
  std::optional<PerSideAngle> bevel_angle;
  std::optional<PerSideAngle> apex_angle;  // of the micro-bevel, where there is one
  std::string finish;                      // as written: "9 um diamond"; empty: not recorded
  std::optional<double> thickness_behind_edge_mm;

  bool operator==(const EdgePreparation&) const = default;
};

// "17° per side, 20° at the apex, 9 µm diamond"; empty when nothing was recorded.
[[nodiscard]] std::string in_words(const EdgePreparation& edge, const materials::ToldIn& told = {});

}  // namespace keenfall::trials
