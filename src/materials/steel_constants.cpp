#include "materials/steel_constants.h"

#include <algorithm>
#include <array>

namespace keenfall::materials {

namespace {

using M = Microstructure;

constexpr std::array kSteelConstants{
    SteelConstant{"hardness of the matrix", "matrix_hv", "HV", &M::matrix_hv, &M::matrix_hv_range},
    SteelConstant{"share of carbide",
                  "carbide_volume_fraction",
                  "",
                  &M::carbide_volume_fraction,
                  &M::carbide_volume_fraction_range},
    SteelConstant{
        "hardness of the carbides", "carbide_hv", "HV", &M::carbide_hv, &M::carbide_hv_range},
    SteelConstant{"diameter of the carbides",
                  "carbide_diameter_um",
                  "µm",
                  &M::carbide_diameter_um,
                  &M::carbide_diameter_um_range},
    SteelConstant{"toughness",
                  "toughness_mpa_sqrt_m",
                  "MPa √m",
                  &M::toughness_mpa_sqrt_m,
                  &M::toughness_mpa_sqrt_m_range}};

}  // namespace

std::span<const SteelConstant> steel_constants() { return kSteelConstants; }

UncertainConstant constant_of(const SteelConstant& row, const Microstructure& steel) {
  const double usual = steel.*row.usual;
  const PlausibleRange& range = steel.*row.range;
  return {.name = std::string(row.name),
          .field = std::string(row.field),
          .unit = std::string(row.unit),
          .estimate = {.typical = usual,
                       .lo = std::min(usual, range.lo),
                       .hi = std::max(usual, range.hi),
                       .from = range.from}};
}

std::vector<UncertainConstant> constants_of(const Microstructure& steel) {
  std::vector<UncertainConstant> constants{{.name = "hardness",
                                            .field = "hardness_hrc",
                                            .unit = "HRC",
                                            .estimate = {.typical = steel.hardness_hrc,
                                                         .lo = steel.hardness_hrc,
                                                         .hi = steel.hardness_hrc,
                                                         .from = steel.hardness_from}}};
  for (const SteelConstant& row : kSteelConstants) constants.push_back(constant_of(row, steel));
  return constants;
}

}  // namespace keenfall::materials
