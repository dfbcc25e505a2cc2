// The units that knife trials are written in, and conversion between them, both ways.
//
// Force N mN gf kgf lbf ozf; length um mm cm m in ft; mass g kg lb oz; angle deg-per-side and
// deg-inclusive; time s min h; hardness HRC and HV; grit systems FEPA-F, FEPA-P, JIS, CAMI.
// Mass and force are two dimensions, yet a mass converts to a force and back as the weight it has
// at standard gravity, because a person who reads "400 g" off a scale they push on means 400 gf.
// Hardness goes through ASTM E140, a grit through its median size: those results are approximate.
// Refused: unknown units, units of different dimensions, numbers outside a table or an angle's
// range, and numbers that are not finite. Constants: see units.cpp.
#pragma once

#include "base/result.h"
#include "materials/grit_table.h"

#include <span>
#include <string>
#include <string_view>

namespace keenfall::materials {

enum class Dimension { force, length, mass, angle, time, hardness, grit };

struct Unit {
  std::string_view name;
  Dimension dimension = Dimension::length;
  double in_base_units = 1;  // of N, mm, g, deg-per-side or s; 1 where no factor applies
  GritSystem grit_system = GritSystem::unknown;  // where the dimension is grit

  bool operator==(const Unit&) const = default;
};

[[nodiscard]] std::span<const Unit> known_units();

// By name or another usual spelling ("microns", "grams", "deg per side"); nullptr when unknown.
[[nodiscard]] const Unit* find_unit(std::string_view name);

// "deg", "°": a degree that does not say whether it is per side or inclusive, and so is no unit.
[[nodiscard]] bool is_bare_degree(std::string_view unit);

// Of one dimension, mass and force kept apart. Two spellings of a unit that is not in the table
// ("chips", "%") count as one unit.
[[nodiscard]] bool same_dimension(std::string_view one, std::string_view other);

struct Conversion {
  double number = 0;
  std::string unit;          // as the table names it
  bool approximate = false;  // rests on a table of typical values rather than on a definition
  std::string note;          // what the number rests on, as a sentence; may be empty

  bool operator==(const Conversion&) const = default;
};

[[nodiscard]] base::Result<Conversion> conversion(double number,
                                                  std::string_view from,
                                                  std::string_view to);

// The number alone.
[[nodiscard]] base::Result<double> convert(double number,
                                           std::string_view from,
                                           std::string_view to);

}  // namespace keenfall::materials
