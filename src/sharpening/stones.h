// Stones as sets of parameters: which abrasive, which grit, and how it cuts and glazes.
//
// Hardness in HV, lengths in um; every parameter with its plausible range, source and trust mark.
// They are kinds of stone, no product of anybody. What is marked guess or tuned has no source:
// docs/methods/resharpening.md.
#pragma once

#include "base/result.h"
#include "materials/uncertain_constant.h"

#include <span>
#include <string>
#include <string_view>

namespace keenfall::sharpening {

using materials::Estimate;

struct Stone {
  std::string name;  // "fused alumina"
  std::string grit;  // with its system: "FEPA-F 220"; empty: not known
  Estimate abrasive_hv;
  Estimate groove_width_um;       // of one grain
  Estimate cutting_power_ratio;   // volume removed at equal resistance, of fused alumina
  Estimate blunt_share_fraction;  // of its fresh rate that a glazed stone keeps, 0 to 1

  bool operator==(const Stone&) const = default;
};

// The softest abrasive first.
[[nodiscard]] std::span<const Stone> known_stones();

// By its abrasive's name, as the table of phases takes it: "alumina", "SiC", "diamond".
[[nodiscard]] base::Result<Stone> find_stone(std::string_view name);

}  // namespace keenfall::sharpening
