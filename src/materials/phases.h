// How hard the carbides and nitrides in steels, minerals, fillers and abrasives are, and which
// of them can scratch which.
//
// Hardness in HV, as a range: sources scatter, and so do the things themselves. Each row has its
// source and trust mark. Rule: what scratches is at least 1.2 times as hard as what is scratched
// (Pintaude 2010, abstract read). docs/methods/materials.md.
#pragma once

#include "base/result.h"
#include "materials/trust.h"

#include <span>
#include <string_view>
#include <vector>

namespace keenfall::materials {

enum class PhaseKind { carbide, nitride, mineral, filler, abrasive };

// "carbide", "nitride", ...
[[nodiscard]] std::string_view in_words(PhaseKind kind);

struct Phase {
  std::string_view name;               // "M7C3", "quartz"
  std::vector<std::string_view> same;  // other names of it
  PhaseKind kind = PhaseKind::mineral;
  double lo_hv = 0;
  double hi_hv = 0;
  Provenance from;
  std::string_view note;

  bool operator==(const Phase&) const = default;
};

// Soft to hard, by the middle of the range.
[[nodiscard]] std::span<const Phase> known_phases();

// By name or other name, whatever case and blanks. Refused: unknown names; the nearest are offered.
[[nodiscard]] base::Result<Phase> find_phase(std::string_view name);

inline constexpr double kScratchingHardnessRatio = 1.2;

enum class Scratching { yes, in_part, no };

// "yes", "in part", "no".
[[nodiscard]] std::string_view in_words(Scratching scratching);

struct HardnessSpan {
  double lo_hv = 0;
  double hi_hv = 0;

  bool operator==(const HardnessSpan&) const = default;
};

[[nodiscard]] HardnessSpan hardness_span(const Phase& phase);

// Yes: even the softest of `hard` is 1.2 times as hard as the hardest of `soft`. No: even the
// hardest of it is not so against the softest. In part: it depends on the pieces that meet.
[[nodiscard]] Scratching scratches(const HardnessSpan& hard, const HardnessSpan& soft);

}  // namespace keenfall::materials
