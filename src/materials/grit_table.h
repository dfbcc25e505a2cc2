// The sizes that grit standards give to their numbers: a row per grit, coarse to fine within a
// system, each with its source. Sizes are medians (d50) in micrometres as the system's own method
// measures them; methods differ, so that sizes of two systems compare only roughly.
#pragma once

#include "materials/trust.h"

#include <optional>
#include <span>
#include <string_view>

namespace keenfall::materials {

enum class GritSystem {
  unknown,     // a bare number or a stone's grade word: never converted
  fepa_f,      // bonded stones and loose grain
  fepa_p,      // coated abrasives: paper, film, cloth
  jis,         // JIS R 6001
  cami,        // CAMI/ANSI coated abrasives
  micrometres  // the size itself
};

// "FEPA-F", "FEPA-P", "JIS", "CAMI", "um", "system unknown".
[[nodiscard]] std::string_view in_words(GritSystem system);

struct GritRow {
  GritSystem system = GritSystem::unknown;
  double number = 0;
  double median_um = 0;
  std::optional<double> tolerance_um;  // plus or minus, where the standard states one
  Provenance from;

  bool operator==(const GritRow&) const = default;
};

[[nodiscard]] std::span<const GritRow> known_grits();

}  // namespace keenfall::materials
