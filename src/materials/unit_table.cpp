// The table of units and how people spell them.

#include "materials/spelling.h"
#include "materials/units.h"

#include <algorithm>
#include <array>
#include <vector>

namespace keenfall::materials {

namespace {

// Standard gravity, 9.80665 m/s2 exactly: 3rd CGPM 1901 (NIST SP 811 B.8), so 1 kgf = 9.80665 N.
constexpr double kNewtonPerKgf = 9.80665;
// The international avoirdupois pound, 0.45359237 kg exactly, and the international inch, 25.4 mm
// exactly: agreement of 1959 (NIST SP 811 B.6, B.8).
constexpr double kGramPerPound = 453.59237;
constexpr double kMmPerInch = 25.4;
// 0.45359237 kg * 9.80665 m/s2 = 4.4482216152605 N exactly (NIST SP 811 B.8).
constexpr double kNewtonPerLbf = 4.4482216152605;

constexpr auto kUnits = std::to_array<Unit>({
    {"N", Dimension::force, 1},
    {"mN", Dimension::force, 1e-3},
    {"gf", Dimension::force, kNewtonPerKgf / 1000},
    {"kgf", Dimension::force, kNewtonPerKgf},
    {"lbf", Dimension::force, kNewtonPerLbf},
    {"ozf", Dimension::force, kNewtonPerLbf / 16},
    {"um", Dimension::length, 1e-3},
    {"mm", Dimension::length, 1},
    {"cm", Dimension::length, 10},
    {"m", Dimension::length, 1000},
    {"in", Dimension::length, kMmPerInch},
    {"ft", Dimension::length, 12 * kMmPerInch},
    {"g", Dimension::mass, 1},
    {"kg", Dimension::mass, 1000},
    {"lb", Dimension::mass, kGramPerPound},
    {"oz", Dimension::mass, kGramPerPound / 16},
    {"deg-per-side", Dimension::angle, 1},
    {"deg-inclusive", Dimension::angle, 0.5},
    {"s", Dimension::time, 1},
    {"min", Dimension::time, 60},
    {"h", Dimension::time, 3600},
    {"HRC", Dimension::hardness, 1},
    {"HV", Dimension::hardness, 1},
    {"FEPA-F", Dimension::grit, 1, GritSystem::fepa_f},
    {"FEPA-P", Dimension::grit, 1, GritSystem::fepa_p},
    {"JIS", Dimension::grit, 1, GritSystem::jis},
    {"CAMI", Dimension::grit, 1, GritSystem::cami},
});

struct Spelling {
  std::string_view written;  // folded
  std::string_view unit;
};

constexpr auto kSpellings = std::to_array<Spelling>({
    {"newton", "N"},
    {"newtons", "N"},
    {"millinewton", "mN"},
    {"millinewtons", "mN"},
    {"gramforce", "gf"},
    {"gramsforce", "gf"},
    {"kilogramforce", "kgf"},
    {"kilogramsforce", "kgf"},
    {"poundforce", "lbf"},
    {"poundsforce", "lbf"},
    {"ounceforce", "ozf"},
    {"ouncesforce", "ozf"},
    {"\u00b5m", "um"},
    {"\u03bcm", "um"},
    {"micron", "um"},
    {"microns", "um"},
    {"micrometre", "um"},
    {"micrometres", "um"},
    {"micrometer", "um"},
    {"micrometers", "um"},
    {"millimetre", "mm"},
    {"millimetres", "mm"},
    {"millimeter", "mm"},
    {"millimeters", "mm"},
    {"centimetre", "cm"},
    {"centimetres", "cm"},
    {"centimeter", "cm"},
    {"centimeters", "cm"},
    {"metre", "m"},
    {"metres", "m"},
    {"meter", "m"},
    {"meters", "m"},
    {"inch", "in"},
    {"inches", "in"},
    {"\"", "in"},
    {"foot", "ft"},
    {"feet", "ft"},
    {"gram", "g"},
    {"grams", "g"},
    {"gramme", "g"},
    {"grammes", "g"},
    {"kilogram", "kg"},
    {"kilograms", "kg"},
    {"pound", "lb"},
    {"pounds", "lb"},
    {"lbs", "lb"},
    {"ounce", "oz"},
    {"ounces", "oz"},
    {"perside", "deg-per-side"},
    {"degreesperside", "deg-per-side"},
    {"degreeperside", "deg-per-side"},
    {"°perside", "deg-per-side"},
    {"dps", "deg-per-side"},
    {"inclusive", "deg-inclusive"},
    {"degreesinclusive", "deg-inclusive"},
    {"degreeinclusive", "deg-inclusive"},
    {"°inclusive", "deg-inclusive"},
    {"sec", "s"},
    {"second", "s"},
    {"seconds", "s"},
    {"minute", "min"},
    {"minutes", "min"},
    {"hr", "h"},
    {"hour", "h"},
    {"hours", "h"},
    {"rockwellc", "HRC"},
    {"vickers", "HV"},
    {"f", "FEPA-F"},
    {"p", "FEPA-P"},
    {"jisr6001", "JIS"},
    {"ansi", "CAMI"},
});

const Unit* by_name(std::string_view name) {
  const auto found = std::ranges::find(kUnits, name, &Unit::name);
  return found == kUnits.end() ? nullptr : &*found;
}

}  // namespace

std::span<const Unit> known_units() { return kUnits; }

const Unit* find_unit(std::string_view name) {
  const std::string_view written = trimmed(name);
  if (const Unit* unit = by_name(written)) return unit;
  // The meganewton is not a misspelt millinewton.
  if (written == "MN") return nullptr;
  const std::string wanted = folded(written);
  for (const Unit& unit : kUnits) {
    if (folded(unit.name) == wanted) return &unit;
  }
  const auto spelling = std::ranges::find(kSpellings, wanted, &Spelling::written);
  return spelling == kSpellings.end() ? nullptr : by_name(spelling->unit);
}

}  // namespace keenfall::materials
