#include "workbench/apex_catalogue.h"

#include "base/require.h"
#include "materials/hardness.h"
#include "materials/spelling.h"
#include "materials/steel_constants.h"
#include "materials/steels.h"
#include "wear/constant_rows.h"
#include "workbench/declared_numbers.h"
#include "workbench/own_before_known.h"

#include <algorithm>
#include <iterator>
#include <span>
#include <utility>

namespace keenfall::workbench {

namespace {

using exchange::NamedNumbers;
using exchange::NumberColumn;
using materials::Microstructure;
using wear::AbrasiveMedium;

// A column's number in a thing, by the column's name: a mismatch cannot be silent.
template <class Thing>
const wear::ConstantOf<Thing>& constant_called(std::span<const wear::ConstantOf<Thing>> constants,
                                               std::string_view field) {
  const auto found = std::ranges::find(constants, field, &wear::ConstantOf<Thing>::field);
  base::require(found != constants.end(), "every column of a table is a constant");
  return *found;
}

template <class Thing>
Thing made_of(const NamedNumbers& row,
              const std::vector<NumberColumn>& columns,
              std::span<const wear::ConstantOf<Thing>> constants) {
  Thing thing;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    constant_called(constants, columns[i].name).in(thing) = row.numbers[i];
  }
  return thing;
}

Microstructure steel_of(const NamedNumbers& row,
                        const std::string& file,
                        std::vector<base::Problem>& problems) {
  const auto said = [&](std::string_view field) {
    const auto column = std::ranges::find(steel_columns(), field, &NumberColumn::name);
    base::require(column != steel_columns().end(), "every constant of a steel has a column");
    return row.numbers[static_cast<std::size_t>(column - steel_columns().begin())];
  };
  const double hrc = said("hardness_hrc");
  Microstructure steel{.name = row.name,
                       .carbide_type = "carbide",
                       .hardness_hrc = hrc,
                       .bulk_hv = materials::vickers_from_rockwell_c(hrc).value(),
                       .hardness_from = kDeclared};
  for (const materials::SteelConstant& constant : materials::steel_constants()) {
    const std::string field(constant.field);
    steel.*constant.usual = said(field);
    steel.*constant.range = declared_range({.column = field,
                                            .number = steel.*constant.usual,
                                            .lo = said(field + "_lo"),
                                            .hi = said(field + "_hi")},
                                           {.file = file, .line = row.line},
                                           problems);
  }
  return steel;
}

AbrasiveMedium medium_of(const NamedNumbers& row) {
  AbrasiveMedium medium = made_of(row, medium_columns(), wear::medium_constants());
  medium.name = row.name;
  medium.acts.name = row.name;
  return medium;
}

NamedFinish finish_of(const NamedNumbers& row) {
  return {.name = row.name, .finish = made_of(row, finish_columns(), wear::finish_constants())};
}

// Those of the file, if one is named; else none.
template <class Make>
auto own(const std::string& path,
         const std::vector<NumberColumn>& columns,
         std::vector<base::Problem>& problems,
         const Make& make) {
  std::vector<decltype(make(NamedNumbers{}))> made;
  if (path.empty()) return made;
  const auto rows = exchange::named_numbers_in_file(path, columns);
  if (rows) {
    std::ranges::transform(*rows, std::back_inserter(made), make);
  } else {
    std::ranges::copy(rows.error(), std::back_inserter(problems));
  }
  return made;
}

template <class Things>
base::Problem nothing_called(const std::string& what, std::string_view name, const Things& things) {
  std::vector<std::string_view> names;
  std::string all;
  for (const auto& thing : things) {
    names.push_back(thing.name);
    all += (all.empty() ? "" : ", ") + thing.name;
  }
  const std::string near = materials::did_you_mean(name, names);
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "no " + what + " is called “" + std::string(name) + "”",
          .place = {.found = std::string(name)},
          .accepted = near.empty() ? all : near};
}

// As it is written; where none is, in small or capital letters.
template <class Things>
auto find_in(const Things& things, const std::string& what, std::string_view name)
    -> base::Result<typename Things::value_type> {
  const auto as_written = std::ranges::find(things, name, &Things::value_type::name);
  if (as_written != things.end()) return *as_written;
  const std::string wanted = materials::lower_case(materials::trimmed(name));
  const auto found = std::ranges::find_if(
      things, [&](const auto& thing) { return materials::lower_case(thing.name) == wanted; });
  if (found != things.end()) return *found;
  return base::failed(nothing_called(what, name, things));
}

}  // namespace

// Hardness as in tables of readings; the rest what the simulator can work with.
const std::vector<NumberColumn>& steel_columns() {
  static const std::vector<NumberColumn> columns = [] {
    const std::vector<NumberColumn> with_ranges = {
        {.name = "matrix_hv", .lowest = 100, .highest = 1500},
        {.name = "carbide_volume_fraction", .highest = 0.6},
        {.name = "carbide_hv", .lowest = 100, .highest = 5000, .otherwise = 1000},
        {.name = "carbide_diameter_um",
         .highest = 100,
         .is_lowest_accepted = false,
         .otherwise = 1},
        {.name = "toughness_mpa_sqrt_m", .highest = 300, .is_lowest_accepted = false}};
    std::vector<NumberColumn> all = {{.name = "hardness_hrc", .lowest = 40, .highest = 68}};
    for (const NumberColumn& column : with_ranges) {
      all.push_back(column);
      std::ranges::move(range_columns(column), std::back_inserter(all));
    }
    return all;
  }();
  return columns;
}

const std::vector<NumberColumn>& medium_columns() {
  static const std::vector<NumberColumn> columns = [] {
    const AbrasiveMedium usual;  // what is not said is as in the presets, without particles
    const wear::CutMedium& acts = usual.acts;
    return std::vector<NumberColumn>{
        {.name = "abrasive_hv", .highest = 12000, .is_lowest_accepted = false},
        {.name = "groove_width_um", .highest = 1000},
        {.name = "reference_wear_rate_mm3_per_newton_metre", .highest = 1},
        {.name = "resistance_ratio_cap", .lowest = 1, .otherwise = usual.resistance_ratio_cap},
        {.name = "line_load_newton_per_mm", .otherwise = acts.wear.line_load_newton_per_mm},
        {.name = "sliding_m_per_cut", .highest = 100, .otherwise = acts.wear.sliding_m_per_cut},
        {.name = "load_growth_exponent", .highest = 1, .otherwise = acts.wear.load_growth_exponent},
        {.name = "load_share_compliance_um",
         .is_lowest_accepted = false,
         .otherwise = acts.wear.load_share_compliance_um},
        {.name = "hits_per_mm_cut", .highest = 1000, .otherwise = 0.0},
        {.name = "median_diameter_um",
         .highest = 5000,
         .is_lowest_accepted = false,
         .otherwise = acts.particles.median_diameter_um},
        {.name = "diameter_spread_ratio",
         .lowest = 1,
         .highest = 10,
         .otherwise = acts.particles.diameter_spread_ratio},
        {.name = "pushback_pressure_mpa", .otherwise = acts.particles.pushback_pressure_mpa},
        {.name = "angle_rms_deg", .highest = 90, .otherwise = acts.particles.angle_rms_deg},
        {.name = "twist_mean_line_load_newton_per_mm", .highest = 1000, .otherwise = 0.0},
        {.name = "twist_patch_length_mm",
         .lowest = 0.004,  // a segment of the simulated edge
         .highest = 1e5,
         .otherwise = acts.twist.patch_length_mm}};
  }();
  return columns;
}

const std::vector<NumberColumn>& finish_columns() {
  static const std::vector<NumberColumn> columns = {
      {.name = "land_width_um", .highest = 100, .is_lowest_accepted = false},
      {.name = "tooth_depth_um", .highest = 500, .otherwise = 0.0},
      {.name = "tooth_spacing_um", .lowest = 8, .highest = 5000, .otherwise = 8}};
  return columns;
}

base::ResultOrProblems<ApexCatalogue> apex_catalogue(const CatalogueFiles& files) {
  std::vector<base::Problem> problems;
  std::vector<base::Problem> out_of_order;
  const auto make_steel = [&](const NamedNumbers& row) {
    return steel_of(row, files.steels, out_of_order);
  };
  ApexCatalogue catalogue{.steels = own(files.steels, steel_columns(), problems, make_steel),
                          .media = own(files.media, medium_columns(), problems, medium_of),
                          .finishes = own(files.finishes, finish_columns(), problems, finish_of)};
  std::ranges::move(out_of_order, std::back_inserter(problems));
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  catalogue.own_steels = catalogue.steels.size();
  catalogue.own_media = catalogue.media.size();
  catalogue.own_finishes = catalogue.finishes.size();
  const std::vector<NamedFinish> finishes = {{.name = "fine", .finish = wear::fine_finish()},
                                             {.name = "coarse", .finish = wear::coarse_finish()}};
  std::vector<std::string>& both = catalogue.in_place_of_known;
  add_known(catalogue.steels, materials::known_microstructures(), "steel", both);
  add_known(catalogue.media, wear::known_media(), "medium", both);
  add_known(catalogue.finishes, finishes, "finish", both);
  return catalogue;
}

base::Result<Microstructure> find_steel(const ApexCatalogue& catalogue, std::string_view name) {
  auto found = find_in(catalogue.steels, "steel", name);
  if (found) return found;
  // By another designation ("1.4112"); a steel that is known and has no row is told of as such.
  auto known = materials::find_microstructure(name);
  if (known) return find_in(catalogue.steels, "steel", known->name);
  return materials::find_steel(name) || catalogue.own_steels == 0 ? known : found;
}

base::Result<AbrasiveMedium> find_medium(const ApexCatalogue& catalogue, std::string_view name) {
  return find_in(catalogue.media, "medium", name);
}

base::Result<NamedFinish> find_finish(const ApexCatalogue& catalogue, std::string_view name) {
  return find_in(catalogue.finishes, "finish", name);
}

}  // namespace keenfall::workbench
