// Rockwell C to Vickers and back, through ASTM E140 (non-austenitic steels), linear between the
// table's rows.
//
// In: 40 to 68 HRC, or 392 to 940 HV; outside that the table holds nothing and the conversion is
// refused. E140 calls converted values approximate: round them to whole HRC, or to about 5 HV.
#pragma once

#include "base/result.h"

#include <span>

namespace keenfall::materials {

struct HardnessRow {
  double hrc = 0;
  double hv = 0;

  bool operator==(const HardnessRow&) const = default;
};

// Source key: astm-e140, seen. Soft to hard.
[[nodiscard]] std::span<const HardnessRow> known_hardness_pairs();

[[nodiscard]] base::Result<double> vickers_from_rockwell_c(double hrc);
[[nodiscard]] base::Result<double> rockwell_c_from_vickers(double hv);

}  // namespace keenfall::materials
