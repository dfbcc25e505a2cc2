#include "materials/steel_table.h"

namespace keenfall::materials {

// A table rather than a procedure.
// NOLINTNEXTLINE(readability-function-size)
std::vector<Steel> carbon_and_low_alloy_steels() {
  using enum Element;
  using enum TrustMark;
  constexpr Provenance kCarbides = {"carbides-memory", from_memory};
  return {
      {.name = "C75S",
       .same = {"1.1248"},
       .near = {"SAE 1075"},
       .composition = {{C, 0.7, 0.8},
                       {Si, 0.15, 0.35},
                       {Mn, 0.6, 0.9},
                       {Cr, {}, 0.4},
                       {Mo, {}, 0.1},
                       {Ni, {}, 0.4}},
       .composition_from = {"en-10132-4", seen},
       .working_hardness = HardnessRange{55, 60, {"trade-memory", from_memory}},
       .note = "hardened strip is sold softer, 370 to 580 HV"},
      {.name = "C100S",
       .same = {"1.1274"},
       .near = {"SAE 1095"},
       .composition = {{C, 0.95, 1.05},
                       {Si, 0.15, 0.35},
                       {Mn, 0.3, 0.6},
                       {Cr, {}, 0.4},
                       {Mo, {}, 0.1},
                       {Ni, {}, 0.4}},
       .composition_from = {"en-10132-memory", from_memory},
       .working_hardness = HardnessRange{58, 64, {"trade-memory", from_memory}}},
      {.name = "SAE 1075",
       .same = {"G10750"},
       .near = {"C75S"},
       .composition = {{C, 0.7, 0.8}, {Mn, 0.4, 0.7}},
       .composition_from = {"sae-memory", from_memory},
       .working_hardness = HardnessRange{55, 60, {"trade-memory", from_memory}}},
      {.name = "SAE 1084",
       .same = {"G10840"},
       .composition = {{C, 0.8, 0.93}, {Mn, 0.6, 0.9}},
       .composition_from = {"astm-a576", seen},
       .working_hardness = HardnessRange{57, 63, {"trade-memory", from_memory}}},
      {.name = "SAE 1095",
       .same = {"G10950"},
       .near = {"C100S"},
       .composition = {{C, 0.9, 1.03}, {Mn, 0.3, 0.5}},
       .composition_from = {"astm-a576", seen},
       .working_hardness = HardnessRange{58, 65, {"trade-memory", from_memory}},
       .carbides = {{"M3C", 2, 6}},
       .carbides_from = kCarbides},
      {.name = "SAE 5160",
       .same = {"G51600"},
       .composition = {{C, 0.56, 0.64}, {Si, 0.15, 0.35}, {Mn, 0.75, 1}, {Cr, 0.7, 0.9}},
       .composition_from = {"sae-memory", from_memory},
       .working_hardness = HardnessRange{56, 60, {"trade-memory", from_memory}}},
      {.name = "SAE 52100",
       .same = {"G52986"},
       .near = {"1.3505", "100Cr6"},
       .composition = {{C, 0.93, 1.05}, {Si, 0.15, 0.35}, {Mn, 0.25, 0.45}, {Cr, 1.35, 1.6}},
       .composition_from = {"astm-a295", seen},
       .working_hardness = HardnessRange{60, 64, {"page-52100", seen}},
       .carbides = {{"M3C", 4, 7}},
       .carbides_from = kCarbides},
      {.name = "75Ni8",
       .same = {"1.5634"},
       .composition = {{C, 0.72, 0.78}, {Si, 0.15, 0.35}, {Mn, 0.3, 0.5}, {Ni, 1.8, 2.1}},
       .composition_from = {"en-10132-memory", from_memory},
       .working_hardness = HardnessRange{57, 62, {"trade-memory", from_memory}},
       .carbides = {{"M3C", 0, 1}},
       .carbides_from = kCarbides},
  };
}

}  // namespace keenfall::materials
