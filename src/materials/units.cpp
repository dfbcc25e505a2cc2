#include "materials/units.h"

#include "base/plain_number.h"
#include "materials/grits.h"
#include "materials/hardness.h"
#include "materials/spelling.h"

#include <cmath>
#include <vector>

namespace keenfall::materials {

namespace {

using base::Problem;
using base::ProblemKind;
using base::Result;

// Standard gravity (3rd CGPM 1901): the weight of one gram.
constexpr double kNewtonPerGram = 9.80665e-3;

// `other`: what it was to be turned into; of its dimension one is wanted.
Problem unknown_unit(std::string_view written, const Unit* other) {
  std::vector<std::string_view> names;
  for (const Unit& unit : known_units()) {
    if (other == nullptr || unit.dimension == other->dimension) names.push_back(unit.name);
  }
  std::string accepted = did_you_mean(written, names);
  if (is_bare_degree(written)) {
    accepted = "deg-per-side or deg-inclusive, since a bare degree says neither";
  }
  if (accepted.empty()) {
    for (const std::string_view name : names) {
      accepted += (accepted.empty() ? "" : ", ") + std::string(name);
    }
  }
  return {.kind = ProblemKind::unknown_name,
          .sentence = trimmed(written).empty()
                          ? "no unit is said"
                          : "the unit “" + std::string(trimmed(written)) + "” is not known",
          .place = {.found = std::string(trimmed(written))},
          .accepted = accepted};
}

std::string_view in_words(Dimension dimension) {
  switch (dimension) {
    case Dimension::force:
      return "a force";
    case Dimension::length:
      return "a length";
    case Dimension::mass:
      return "a mass";
    case Dimension::angle:
      return "an angle";
    case Dimension::time:
      return "a time";
    case Dimension::hardness:
      return "a hardness";
    case Dimension::grit:
      return "a grit";
  }
  return "";
}

std::string units_of(Dimension dimension) {
  std::string names;
  for (const Unit& unit : known_units()) {
    if (unit.dimension == dimension) names += (names.empty() ? "" : ", ") + std::string(unit.name);
  }
  return names;
}

Problem different_dimensions(const Unit& from, const Unit& to) {
  return {.kind = ProblemKind::conflicting,
          .sentence = std::string(from.name) + " is the unit of " +
                      std::string(in_words(from.dimension)) + " and " + std::string(to.name) +
                      " of " + std::string(in_words(to.dimension)) +
                      "; one cannot be turned into the other",
          .accepted = units_of(from.dimension)};
}

bool fits_an_angle(double number, const Unit& unit) {
  const double per_side_deg = number * unit.in_base_units;
  return per_side_deg > 0 && per_side_deg < 90;
}

Result<Conversion> by_factor(double number, const Unit& from, const Unit& to) {
  double factor = from.in_base_units / to.in_base_units;
  std::string note;
  if (from.dimension != to.dimension) {
    const bool weighing = from.dimension == Dimension::mass;
    factor = weighing ? from.in_base_units * kNewtonPerGram / to.in_base_units
                      : from.in_base_units / kNewtonPerGram / to.in_base_units;
    note = "A mass counts as the force it weighs at standard gravity, as a scale shows it.";
  }
  if (from.dimension == Dimension::angle && !fits_an_angle(number, from)) {
    return base::failed({.sentence = "an edge angle lies between 0 and 90 degrees per side (0 and "
                                     "180 inclusive), not at " +
                                     base::plain_number(number) + " " + std::string(from.name)});
  }
  const double converted = from == to ? number : number * factor;
  if (!std::isfinite(converted)) {
    return base::failed({.sentence = base::plain_number(number) + " " + std::string(from.name) +
                                     " is too large to be written in " + std::string(to.name)});
  }
  return Conversion{.number = converted, .unit = std::string(to.name), .note = note};
}

Result<Conversion> of_hardness(double number, const Unit& from, const Unit& to) {
  if (from == to) return Conversion{.number = number, .unit = std::string(to.name)};
  const auto other =
      from.name == "HRC" ? vickers_from_rockwell_c(number) : rockwell_c_from_vickers(number);
  if (!other) return base::failed(other.error());
  return Conversion{.number = *other,
                    .unit = std::string(to.name),
                    .approximate = true,
                    .note =
                        "Through ASTM E140, linear between its rows; converted hardness is "
                        "approximate: take whole HRC, or about 5 HV."};
}

Result<Conversion> of_grit(double number, const Unit& from, const Unit& to) {
  const bool from_size = from.dimension == Dimension::length;
  const auto size_um = from_size ? Result<double>(number * from.in_base_units * 1000)
                                 : to_micrometres({.system = from.grit_system,
                                                   .number = number,
                                                   .as_written = base::plain_number(number) + " " +
                                                                 std::string(from.name)});
  if (!size_um) return base::failed(size_um.error());
  const std::string note =
      "Through the median grain size; systems measure it in different ways, so this is rough.";
  if (to.dimension == Dimension::length) {
    return Conversion{.number = *size_um / 1000 / to.in_base_units,
                      .unit = std::string(to.name),
                      .approximate = true,
                      .note = note};
  }
  if (from == to) return Conversion{.number = number, .unit = std::string(to.name)};
  const auto nearest = nearest_in_system(*size_um, to.grit_system);
  if (!nearest) return base::failed(nearest.error());
  return Conversion{.number = nearest->grit.number.value_or(0),
                    .unit = std::string(to.name),
                    .approximate = true,
                    .note = note};
}

bool share_a_factor(const Unit& from, const Unit& to) {
  const auto is_load = [](const Unit& unit) {
    return unit.dimension == Dimension::force || unit.dimension == Dimension::mass;
  };
  return from.dimension == to.dimension || (is_load(from) && is_load(to));
}

bool is_grain_size(const Unit& from, const Unit& to) {
  const auto fits = [](const Unit& unit) {
    return unit.dimension == Dimension::grit || unit.dimension == Dimension::length;
  };
  return fits(from) && fits(to) &&
         (from.dimension == Dimension::grit || to.dimension == Dimension::grit);
}

}  // namespace

bool is_bare_degree(std::string_view unit) {
  const std::string lower = folded(unit);
  return lower == "deg" || lower == "degree" || lower == "degrees" || lower == "°";
}

bool same_dimension(std::string_view one, std::string_view other) {
  const Unit* first = find_unit(one);
  const Unit* second = find_unit(other);
  if (first == nullptr || second == nullptr) {
    return first == second && folded(one) == folded(other) && !folded(one).empty();
  }
  return first->dimension == second->dimension;
}

Result<Conversion> conversion(double number, std::string_view from, std::string_view to) {
  if (!std::isfinite(number)) {
    return base::failed(
        {.sentence = "only a finite number can be converted, not " + base::plain_number(number)});
  }
  const Unit* first = find_unit(from);
  const Unit* second = find_unit(to);
  if (first == nullptr && second == nullptr && same_dimension(from, to)) {
    return Conversion{.number = number, .unit = std::string(trimmed(to))};
  }
  if (first == nullptr) return base::failed(unknown_unit(from, second));
  if (second == nullptr) return base::failed(unknown_unit(to, first));
  if (is_grain_size(*first, *second)) return of_grit(number, *first, *second);
  if (!share_a_factor(*first, *second)) {
    return base::failed(different_dimensions(*first, *second));
  }
  if (first->dimension == Dimension::hardness) return of_hardness(number, *first, *second);
  return by_factor(number, *first, *second);
}

Result<double> convert(double number, std::string_view from, std::string_view to) {
  return conversion(number, from, to).transform([](const Conversion& done) { return done.number; });
}

}  // namespace keenfall::materials
