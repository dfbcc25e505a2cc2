#include "cli/reference_commands.h"
#include "cli/text_layout.h"
#include "materials/grits.h"
#include "materials/quantity.h"
#include "materials/units.h"

#include <fmt/format.h>

#include <cmath>

namespace keenfall::cli {

namespace {

using base::Result;
using materials::Conversion;
using materials::Dimension;
using materials::Grit;
using materials::GritSystem;
using materials::Quantity;
using materials::Unit;

bool is_grit_number(const Grit& grit) {
  return grit.system != GritSystem::unknown && grit.system != GritSystem::micrometres;
}

bool is_about_grain(std::string_view unit_name) {
  const Unit* unit = materials::find_unit(unit_name);
  return unit != nullptr && (unit->dimension == Dimension::grit || unit->name == "um");
}

// A grit where the text is one, else a number and its unit. A number alone is refused.
Result<Quantity> asked_quantity(std::string_view text, std::string_view to_unit) {
  const Grit grit = materials::parse_grit(text);
  if (is_grit_number(grit)) {
    return Quantity{.number = grit.number.value_or(0), .unit = std::string(in_words(grit.system))};
  }
  auto quantity = materials::parse_quantity(text);
  const bool has_unit = quantity && !quantity->unit.empty();
  if (!has_unit && is_about_grain(to_unit)) {
    return base::failed(materials::to_micrometres(grit).error());
  }
  if (quantity && !has_unit) {
    return base::failed({.kind = base::ProblemKind::missing,
                         .sentence = "“" + std::string(text) + "” has no unit",
                         .place = {.found = std::string(text)},
                         .accepted = "a number and its unit, such as 400gf, 3.9 N or 0.3 mm"});
  }
  return quantity;
}

std::string quantity_text(double number, std::string_view unit_name) {
  const Unit* unit = materials::find_unit(unit_name);
  if (unit == nullptr) return fmt::format("{:.6g} {}", number, unit_name);
  if (unit->name == "um") return fmt::format("{:.6g} µm", number);
  if (unit->name == "deg-per-side") return fmt::format("{:.6g}° per side", number);
  if (unit->name == "deg-inclusive") return fmt::format("{:.6g}° inclusive", number);
  if (unit->dimension != Dimension::grit) return fmt::format("{:.6g} {}", number, unit->name);
  const auto* row = find_grit(Grit{.system = unit->grit_system, .number = number});
  if (row == nullptr) return fmt::format("{} {:g}", unit->name, number);
  return fmt::format("{} {:g} ({:.1f} µm, {}, {})",
                     unit->name,
                     number,
                     row->median_um,
                     in_words(row->from.mark),
                     row->from.source_key);
}

// Converted hardness is worth whole numbers only (ASTM E140).
double as_worth(const Conversion& conversion) {
  const Unit* unit = materials::find_unit(conversion.unit);
  const bool is_hardness = unit != nullptr && unit->dimension == Dimension::hardness;
  return conversion.approximate && is_hardness ? std::round(conversion.number) : conversion.number;
}

}  // namespace

Result<std::string> convert_command(std::string_view quantity,
                                    std::string_view to_unit,
                                    const Look& look) {
  const auto asked = asked_quantity(quantity, to_unit);
  if (!asked) return base::failed(asked.error());
  const auto converted = materials::conversion(asked->number, asked->unit, to_unit);
  if (!converted) return base::failed(converted.error());
  const std::string line = quantity_text(asked->number, asked->unit) +
                           (converted->approximate ? " is about " : " = ") +
                           quantity_text(as_worth(*converted), converted->unit);
  std::string text = wrapped(shown_as(line, look), {}, look);
  if (!converted->note.empty()) text += wrapped(shown_as(converted->note, look), {}, look);
  return text;
}

}  // namespace keenfall::cli
