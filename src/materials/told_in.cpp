#include "materials/told_in.h"

#include "base/plain_number.h"
#include "base/require.h"
#include "materials/spelling.h"
#include "materials/units.h"

#include <array>
#include <cmath>
#include <cstdlib>

namespace keenfall::materials {

namespace {

using base::Problem;
using base::ProblemKind;

constexpr std::string_view kAsRecorded = "as recorded";

constexpr auto kForces = std::to_array<ToldChoice>(
    {{"gf", "grams (gf)"}, {"N", "newtons (N)"}, {"lbf", "pounds (lbf)"}});
constexpr auto kLengths =
    std::to_array<ToldChoice>({{"mm", "millimetres (mm)"}, {"in", "inches (in)"}});

const Unit* as_force(const Unit& unit) {
  if (unit.dimension == Dimension::force) return &unit;
  return unit.dimension == Dimension::mass ? find_unit(std::string(unit.name) + "f") : nullptr;
}

bool is_length_told(const Unit& unit) { return unit.name == "mm" || unit.name == "in"; }

Problem none_to_be_told_in(std::string_view written) {
  std::string accepted;
  for (const Unit& unit : known_units()) {
    if (unit.dimension == Dimension::force) accepted += std::string(unit.name) + ", ";
  }
  return {.kind = ProblemKind::unknown_name,
          .sentence = "Nothing is told in “" + std::string(written) + "”.",
          .place = {.found = std::string(written)},
          .accepted = accepted + "mm or in; one of force and one of length"};
}

// Decimals of a number written plainly: 2 of 0.38.
int decimals_of(double number) {
  constexpr int kMost = 15;
  double tenfold = std::abs(number);
  int decimals = 0;
  while (decimals < kMost && std::abs(tenfold - std::round(tenfold)) > 1e-9 * (1 + tenfold)) {
    tenfold *= 10;
    ++decimals;
  }
  return decimals;
}

double converted(double number, const std::string& from, const std::string& to) {
  const auto in_other_unit = convert(number, from, to);
  base::require(in_other_unit.has_value(), "what is told in another unit converts into it");
  return *in_other_unit;
}

// Without the noughts at its end: "3.940" is "3.94".
std::string without_last_noughts(std::string text) {
  if (text.find('.') == std::string::npos) return text;
  while (text.back() == '0') text.pop_back();
  if (text.back() == '.') text.pop_back();
  return text;
}

// Fewest figures, three or more, that round back to the recorded number at its own decimals.
std::string told_text(double number, const std::string& from, const std::string& to) {
  constexpr int kFewest = 3;
  constexpr int kMost = 6;
  const double exact = converted(number, from, to);
  const std::string recorded = base::with_decimals(number, decimals_of(number));
  std::string text;
  for (int figures = kFewest; figures <= kMost; ++figures) {
    text = base::with_figures(exact, figures);
    const double back = converted(std::strtod(text.c_str(), nullptr), to, from);
    if (base::with_decimals(back, decimals_of(number)) == recorded) break;
  }
  return without_last_noughts(text);
}

}  // namespace

base::Result<ToldIn> told_in(std::string_view units) {
  ToldIn told;
  if (trimmed(units).empty() || trimmed(units) == kAsRecorded) return told;
  std::string_view rest = units;
  while (true) {
    const std::size_t comma = rest.find(',');
    const std::string_view written = trimmed(rest.substr(0, comma));
    const Unit* const unit = find_unit(written);
    if (unit == nullptr) return base::failed(none_to_be_told_in(written));
    const Unit* const force = as_force(*unit);
    std::string& place = force != nullptr ? told.force : told.length;
    if ((force == nullptr && !is_length_told(*unit)) || !place.empty()) {
      return base::failed(none_to_be_told_in(written));
    }
    place = (force != nullptr ? force : unit)->name;
    if (comma == std::string_view::npos) return told;
    rest.remove_prefix(comma + 1);
  }
}

std::string text_of(const ToldIn& told) {
  if (told.force.empty() || told.length.empty()) return told.force + told.length;
  return told.force + "," + told.length;
}

std::string told_unit(const std::string& unit, const ToldIn& told) {
  const Unit* const known = find_unit(unit);
  if (known == nullptr) return unit;
  const bool is_small = known->name == "um";
  if (known->dimension == Dimension::force && !told.force.empty()) return told.force;
  if (known->dimension == Dimension::length && !is_small && !told.length.empty()) {
    return told.length;
  }
  return unit;
}

double told_number(double number, const std::string& from, const std::string& to) {
  if (from == to || number == 0) return number;
  return std::strtod(told_text(number, from, to).c_str(), nullptr);
}

std::string length_words(double length_mm, const ToldIn& told) {
  const std::string unit = told_unit("mm", told);
  const std::string number =
      unit == "mm" ? base::plain_number(length_mm) : told_text(length_mm, "mm", unit);
  return number + " " + unit;
}

std::span<const ToldChoice> forces_to_choose() { return kForces; }

std::span<const ToldChoice> lengths_to_choose() { return kLengths; }

std::string long_length_unit(const ToldIn& told) { return told.length == "in" ? "ft" : "m"; }

}  // namespace keenfall::materials
