// A blade in one go: its steel, then its hardness and its angle where they are not the usual ones,
// in any order: "X153CrMoV12 61HRC 20deg-per-side", "C75S 58 HRC".
//
// Numbers are read as options are: decimal point or comma, a bare degree counts as per side. Fails
// for unknown steels, for a number that does not say what it is, and for a hardness too far from
// that of the steel's row.
#pragma once

#include "base/result.h"
#include "trials/edge.h"
#include "workbench/apex_catalogue.h"

#include <optional>
#include <string_view>

namespace keenfall::cli {

struct SteelInWords {
  materials::Microstructure steel;  // at the hardness said
  std::optional<trials::PerSideAngle> angle;
};

[[nodiscard]] base::Result<SteelInWords> steel_in_words(const workbench::ApexCatalogue& catalogue,
                                                        std::string_view text);

// Of an option that takes no angle: refused where one is said.
[[nodiscard]] base::Result<materials::Microstructure> steel_without_angle(
    const workbench::ApexCatalogue& catalogue, std::string_view text);

}  // namespace keenfall::cli
