#include "workbench/apex_catalogue.h"

#include "materials/hardness.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace keenfall::workbench {

namespace {

using exchange::NamedNumbers;
using exchange::NumberColumn;
using materials::Microstructure;
using wear::AbrasiveMedium;

materials::PlausibleRange just(double number) {
  return {.lo = number, .hi = number, .from = {"own-file", materials::TrustMark::declared}};
}

Microstructure steel_of(const NamedNumbers& row) {
  const auto& n = row.numbers;
  Microstructure steel{.name = row.name,
                       .carbide_type = "carbide",
                       .hardness_hrc = n[0],
                       .bulk_hv = materials::vickers_from_rockwell_c(n[0]).value(),
                       .matrix_hv = n[1],
                       .carbide_volume_fraction = n[2],
                       .carbide_hv = n[3],
                       .carbide_diameter_um = n[4],
                       .toughness_mpa_sqrt_m = n[5]};
  steel.hardness_from = just(0).from;
  steel.matrix_hv_range = just(steel.matrix_hv);
  steel.carbide_volume_fraction_range = just(steel.carbide_volume_fraction);
  steel.carbide_hv_range = just(steel.carbide_hv);
  steel.carbide_diameter_um_range = just(steel.carbide_diameter_um);
  steel.toughness_mpa_sqrt_m_range = just(steel.toughness_mpa_sqrt_m);
  return steel;
}

// A medium's constants, one after the other: for reading and for writing.
template <class Medium, class Use>
void each_constant(Medium& medium, const Use& use) {
  use(medium.abrasive_hv);
  use(medium.groove_width_um);
  use(medium.reference_wear_rate_mm3_per_newton_metre);
  use(medium.resistance_ratio_cap);
  use(medium.acts.wear.line_load_newton_per_mm);
  use(medium.acts.wear.sliding_m_per_cut);
  use(medium.acts.wear.load_growth_exponent);
  use(medium.acts.wear.load_share_compliance_um);
  use(medium.acts.particles.hits_per_mm_cut);
  use(medium.acts.particles.median_diameter_um);
  use(medium.acts.particles.diameter_spread_ratio);
  use(medium.acts.particles.pushback_pressure_mpa);
  use(medium.acts.particles.angle_rms_deg);
  use(medium.acts.twist.mean_line_load_newton_per_mm);
  use(medium.acts.twist.patch_length_mm);
}

AbrasiveMedium medium_of(const NamedNumbers& row) {
  AbrasiveMedium medium{.name = row.name};
  medium.acts.name = row.name;
  auto number = row.numbers.begin();
  each_constant(medium, [&](double& constant) { constant = *number++; });
  return medium;
}

NamedFinish finish_of(const NamedNumbers& row) {
  return {.name = row.name,
          .finish = {.land_width_um = row.numbers[0],
                     .tooth_depth_um = row.numbers[1],
                     .tooth_spacing_um = row.numbers[2]}};
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
  std::string accepted;
  for (const auto& thing : things) accepted += (accepted.empty() ? "" : ", ") + thing.name;
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "the apex simulator has no " + what + " called “" + std::string(name) + "”",
          .place = {.found = std::string(name)},
          .accepted = accepted};
}

template <class Things>
auto find_in(const Things& things, const std::string& what, std::string_view name)
    -> base::Result<typename Things::value_type> {
  const auto found =
      std::ranges::find_if(things, [&](const auto& thing) { return thing.name == name; });
  if (found != things.end()) return *found;
  return base::failed(nothing_called(what, name, things));
}

}  // namespace

// Hardness as in tables of readings; the rest what the simulator can work with.
const std::vector<NumberColumn>& steel_columns() {
  static const std::vector<NumberColumn> columns = {
      {.name = "hardness_hrc", .lowest = 40, .highest = 68},
      {.name = "matrix_hv", .lowest = 100, .highest = 1500},
      {.name = "carbide_volume_fraction", .highest = 0.6},
      {.name = "carbide_hv", .lowest = 100, .highest = 5000, .otherwise = 1000},
      {.name = "carbide_diameter_um", .highest = 100, .is_lowest_accepted = false, .otherwise = 1},
      {.name = "toughness_mpa_sqrt_m", .highest = 300, .is_lowest_accepted = false}};
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

// As wear/uncertain_constants.cpp has them, and guesses for what only shows as a product.
const std::vector<materials::Provenance>& medium_provenances() {
  using enum materials::TrustMark;
  static const std::vector<materials::Provenance> from = [] {
    constexpr materials::Provenance kGuess{"plausible", guessed};
    constexpr materials::Provenance kTuned{"practice", tuned};
    return std::vector<materials::Provenance>{kGuess,
                                              kGuess,
                                              kTuned,
                                              kTuned,
                                              kGuess,
                                              kGuess,
                                              kGuess,
                                              kGuess,
                                              kTuned,
                                              kTuned,
                                              kTuned,
                                              kTuned,
                                              kTuned,
                                              kTuned,
                                              kGuess};
  }();
  return from;
}

std::vector<double> numbers_of(const AbrasiveMedium& medium) {
  std::vector<double> numbers;
  each_constant(medium, [&](double constant) { numbers.push_back(constant); });
  return numbers;
}

std::vector<double> numbers_of(const wear::EdgeFinish& finish) {
  return {finish.land_width_um, finish.tooth_depth_um, finish.tooth_spacing_um};
}

base::ResultOrProblems<ApexCatalogue> apex_catalogue(const CatalogueFiles& files) {
  std::vector<base::Problem> problems;
  ApexCatalogue catalogue{.steels = own(files.steels, steel_columns(), problems, steel_of),
                          .media = own(files.media, medium_columns(), problems, medium_of),
                          .finishes = own(files.finishes, finish_columns(), problems, finish_of)};
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  catalogue.own_steels = catalogue.steels.size();
  catalogue.own_media = catalogue.media.size();
  catalogue.own_finishes = catalogue.finishes.size();
  std::ranges::copy(materials::known_microstructures(), std::back_inserter(catalogue.steels));
  std::ranges::copy(wear::known_media(), std::back_inserter(catalogue.media));
  catalogue.finishes.push_back({.name = "fine", .finish = wear::fine_finish()});
  catalogue.finishes.push_back({.name = "coarse", .finish = wear::coarse_finish()});
  return catalogue;
}

base::Result<Microstructure> find_steel(const ApexCatalogue& catalogue, std::string_view name) {
  auto found = find_in(catalogue.steels, "steel", name);
  if (found) return found;
  // By another designation ("1.4112").
  auto known = materials::find_microstructure(name);
  return known ? known : found;
}

base::Result<AbrasiveMedium> find_medium(const ApexCatalogue& catalogue, std::string_view name) {
  return find_in(catalogue.media, "medium", name);
}

base::Result<NamedFinish> find_finish(const ApexCatalogue& catalogue, std::string_view name) {
  return find_in(catalogue.finishes, "finish", name);
}

}  // namespace keenfall::workbench
