#include "cli/reference_commands.h"
#include "cli/ruled_table.h"
#include "cli/source_list.h"
#include "cli/text_layout.h"
#include "materials/grits.h"
#include "materials/units.h"

#include <fmt/format.h>

#include <array>
#include <set>

namespace keenfall::cli {

namespace {

using materials::Grit;
using materials::GritRow;
using materials::GritSystem;

constexpr std::array<GritSystem, 4> kNumberedSystems = {
    GritSystem::fepa_f, GritSystem::fepa_p, GritSystem::jis, GritSystem::cami};

std::string name_of(GritSystem system) { return std::string(in_words(system)); }

std::string side_by_side_text(const Look& look) {
  RuledTable table{.columns = {{.head = "grit", .side = Side::right}}};
  for (const GritSystem system : kNumberedSystems) {
    table.columns.push_back({.head = name_of(system) + " µm  "});
  }
  std::set<double> numbers;
  for (const GritRow& row : materials::known_grits()) numbers.insert(row.number);
  for (const double number : numbers) {
    std::vector<std::string> cells = {fmt::format("{:g}", number)};
    for (const GritSystem system : kNumberedSystems) {
      const GritRow* row = find_grit(Grit{.system = system, .number = number});
      cells.push_back(row == nullptr
                          ? ""
                          : fmt::format("{:.1f} {}", row->median_um, mark_letter(row->from.mark)));
    }
    table.rows.push_back(cells);
  }
  return laid_out(table, look).text + "\n" +
         wrapped(
             "Median grain size. One number is a different size in every system, so a bare "
             "number says nothing.",
             {},
             look) +
         mark_letters_explained(look) +
         wrapped(
             "`keenfall grits JIS` shows one system with its sources, `keenfall grits F1000` "
             "one grit.",
             {},
             look);
}

std::string system_text(GritSystem system, const Look& look) {
  RuledTable table{.columns = {{.head = "grit", .side = Side::right},
                               {.head = "median µm"},
                               {.head = "±"},
                               {.head = "mark", .side = Side::left},
                               {.head = "source", .side = Side::left}}};
  SourceList sources;
  for (const GritRow& row : materials::known_grits()) {
    if (row.system != system) continue;
    table.rows.push_back({fmt::format("{:g}", row.number),
                          fmt::format("{:.1f}", row.median_um),
                          row.tolerance_um ? fmt::format("{:.1f}", *row.tolerance_um) : "",
                          std::string(in_words(row.from.mark)),
                          std::string(row.from.source_key)});
    sources.add(row.from);
  }
  return name_of(system) + "\n\n" + laid_out(table, look).text + "\n" + sources.text(look);
}

// What one size comes nearest to in every system but its own.
std::string neighbours_text(double size_um, GritSystem own, SourceList& sources, const Look& look) {
  RuledTable table{.columns = {{.head = "nearest", .side = Side::left},
                               {.head = "grit"},
                               {.head = "median µm"},
                               {.head = "times the size"},
                               {.head = "mark", .side = Side::left},
                               {.head = "source", .side = Side::left}}};
  for (const GritSystem system : kNumberedSystems) {
    if (system == own) continue;
    const auto nearest = nearest_in_system(size_um, system);
    const GritRow* row = nearest ? find_grit(nearest->grit) : nullptr;
    if (row == nullptr) {
      table.rows.push_back({name_of(system), "none near", "", "", "", ""});
      continue;
    }
    table.rows.push_back({name_of(system),
                          fmt::format("{:g}", row->number),
                          fmt::format("{:.1f}", row->median_um),
                          fmt::format("{:.2f}", nearest->ratio),
                          std::string(in_words(row->from.mark)),
                          std::string(row->from.source_key)});
    sources.add(row->from);
  }
  return laid_out(table, look).text;
}

std::string grit_text(const Grit& grit, double size_um, const Look& look) {
  SourceList sources;
  std::string head = fmt::format("A grain of {:g} µm, a size rather than a grit number.", size_um);
  if (const GritRow* row = find_grit(grit)) {
    head = fmt::format("{} has a median grain of {:.1f} µm ({}, {}).",
                       in_words(grit),
                       size_um,
                       in_words(row->from.mark),
                       row->from.source_key);
    sources.add(row->from);
  }
  const std::string neighbours = neighbours_text(size_um, grit.system, sources, look);
  return wrapped(shown_as(head, look), {}, look) + "\n" + neighbours + "\n" +
         wrapped("The systems measure size in different ways: a neighbour is rough, not equal.",
                 {},
                 look) +
         "\n" + sources.text(look);
}

std::string possibilities_text(const Grit& grit,
                               const std::vector<GritRow>& could_be,
                               const Look& look) {
  RuledTable table{.columns = {{.head = "it could be", .side = Side::left},
                               {.head = "median µm"},
                               {.head = "mark", .side = Side::left},
                               {.head = "source", .side = Side::left}}};
  SourceList sources;
  for (const GritRow& row : could_be) {
    table.rows.push_back({fmt::format("{} {:g}", in_words(row.system), row.number),
                          fmt::format("{:.1f}", row.median_um),
                          std::string(in_words(row.from.mark)),
                          std::string(row.from.source_key)});
    sources.add(row.from);
  }
  const std::string head = "“" + grit.as_written +
                           "” does not say its system, so its size is not known and it matches no "
                           "other finish.";
  return wrapped(shown_as(head, look), {}, look) + "\n" + laid_out(table, look).text + "\n" +
         sources.text(look);
}

}  // namespace

base::Result<std::string> grits_command(std::string_view asked, const Look& look) {
  if (asked.empty()) return side_by_side_text(look);
  const materials::Unit* unit = materials::find_unit(asked);
  if (unit != nullptr && unit->dimension == materials::Dimension::grit) {
    return system_text(unit->grit_system, look);
  }
  const Grit grit = materials::parse_grit(asked);
  if (grit.system == GritSystem::unknown) {
    const auto could_be = materials::possible_sizes_um(grit.number.value_or(0));
    if (!could_be.empty()) return possibilities_text(grit, could_be, look);
  }
  return to_micrometres(grit).transform(
      [&](double size_um) { return grit_text(grit, size_um, look); });
}

}  // namespace keenfall::cli
