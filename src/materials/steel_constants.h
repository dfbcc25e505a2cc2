// What a steel's microstructure says of it, as constants with their ranges: for whoever varies
// them, and for whoever tells of them.
#pragma once

#include "materials/microstructure.h"
#include "materials/uncertain_constant.h"

#include <span>
#include <string_view>
#include <vector>

namespace keenfall::materials {

struct SteelConstant {
  std::string_view name;   // "hardness of the matrix"
  std::string_view field;  // "matrix_hv", which is also its column in a person's own table
  std::string_view unit;   // "HV"
  double Microstructure::*usual = nullptr;
  PlausibleRange Microstructure::*range = nullptr;
};

// Matrix, carbide (share, hardness, diameter), toughness; not the hardness of the whole, which is a
// reading and has no range.
[[nodiscard]] std::span<const SteelConstant> steel_constants();

[[nodiscard]] UncertainConstant constant_of(const SteelConstant& row, const Microstructure& steel);

// All of them, the hardness of the whole in HRC first.
[[nodiscard]] std::vector<UncertainConstant> constants_of(const Microstructure& steel);

}  // namespace keenfall::materials
