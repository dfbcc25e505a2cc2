#include "workbench/stone_catalogue.h"

#include "base/plain_number.h"
#include "materials/spelling.h"
#include "workbench/declared_numbers.h"
#include "workbench/own_before_known.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

namespace keenfall::workbench {

namespace {

using exchange::NamedNumbers;
using exchange::NumberColumn;
using sharpening::Estimate;

constexpr double kNotSaid = std::numeric_limits<double>::quiet_NaN();
constexpr materials::Provenance kUnsaid = {"plausible", materials::TrustMark::guessed};
constexpr std::size_t kGrain = 0;  // of the columns; the numbers with ranges follow it

// What has a range, in the order of the columns, and what it is where a file does not say it.
struct StoneNumber {
  NumberColumn column;
  Estimate sharpening::Stone::*member;
  Estimate otherwise;
};

const std::vector<StoneNumber>& stone_numbers() {
  using S = sharpening::Stone;
  static const std::vector<StoneNumber> numbers = {
      {{.name = "abrasive_hv", .lowest = 100, .highest = 12000}, &S::abrasive_hv, {}},
      {{.name = "groove_width_um", .lowest = 0.01, .highest = 1000, .otherwise = kNotSaid},
       &S::groove_width_um,
       {4, 2, 8, kUnsaid}},
      {{.name = "cutting_power_ratio", .lowest = 0.01, .highest = 100, .otherwise = kNotSaid},
       &S::cutting_power_ratio,
       {1.5, 0.5, 5, kUnsaid}},
      {{.name = "blunt_share_fraction", .lowest = 0.01, .highest = 1, .otherwise = kNotSaid},
       &S::blunt_share_fraction,
       {0.5, 0.1, 1, kUnsaid}}};
  return numbers;
}

// A tenth to a twentieth of a grain: common practice, no source.
Estimate groove_of(double grain_um) {
  return {.typical = grain_um / 14, .lo = grain_um / 20, .hi = grain_um / 10, .from = kUnsaid};
}

sharpening::Stone stone_of(const NamedNumbers& row,
                           const std::string& file,
                           std::vector<base::Problem>& problems) {
  const double grain_um = row.numbers[kGrain];
  const bool has_grain = !std::isnan(grain_um);
  sharpening::Stone stone{.name = row.name,
                          .grit = has_grain ? base::plain_number(grain_um) + " µm" : ""};
  auto number = row.numbers.begin() + kGrain + 1;
  for (const StoneNumber& each : stone_numbers()) {
    const double typical = *number++;
    const double lo = *number++;
    const double hi = *number++;
    if (std::isnan(typical)) {
      const bool is_groove = each.member == &sharpening::Stone::groove_width_um;
      stone.*each.member = is_groove && has_grain ? groove_of(grain_um) : each.otherwise;
      if (!std::isnan(lo) || !std::isnan(hi)) {
        problems.push_back(
            {.kind = base::ProblemKind::missing,
             .sentence = "There is a range of " + each.column.name + " and no usual figure.",
             .place = {.file = file, .line = row.line, .column = each.column.name},
             .accepted = "a number inside that range"});
      }
      continue;
    }
    const auto range =
        declared_range({.column = each.column.name, .number = typical, .lo = lo, .hi = hi},
                       {.file = file, .line = row.line},
                       problems);
    stone.*each.member = {.typical = typical, .lo = range.lo, .hi = range.hi, .from = range.from};
  }
  return stone;
}

}  // namespace

const std::vector<NumberColumn>& stone_columns() {
  static const std::vector<NumberColumn> columns = [] {
    std::vector<NumberColumn> all = {
        {.name = "grain_um", .lowest = 0.05, .highest = 2000, .otherwise = kNotSaid}};
    for (const StoneNumber& each : stone_numbers()) {
      all.push_back(each.column);
      std::ranges::move(range_columns(each.column), std::back_inserter(all));
    }
    return all;
  }();
  return columns;
}

base::ResultOrProblems<StoneCatalogue> stone_catalogue(const std::string& path) {
  StoneCatalogue catalogue;
  if (!path.empty()) {
    const auto rows = exchange::named_numbers_in_file(path, stone_columns());
    if (!rows) return tl::unexpected(rows.error());
    std::vector<base::Problem> problems;
    for (const NamedNumbers& row : *rows) {
      catalogue.stones.push_back(stone_of(row, path, problems));
    }
    if (!problems.empty()) return tl::unexpected(problems);
  }
  catalogue.own = catalogue.stones.size();
  add_known(catalogue.stones, sharpening::known_stones(), "stone", catalogue.in_place_of_known);
  return catalogue;
}

base::Result<sharpening::Stone> find_stone(const StoneCatalogue& catalogue, std::string_view name) {
  const auto found = std::ranges::find(catalogue.stones, name, &sharpening::Stone::name);
  if (found != catalogue.stones.end()) return *found;
  const auto known = sharpening::find_stone(name);
  if (known) {
    // By another name of its abrasive; where the file has one of its name, that.
    const std::string wanted = materials::lower_case(known->name);
    return *std::ranges::find_if(catalogue.stones, [&](const sharpening::Stone& stone) {
      return materials::lower_case(stone.name) == wanted;
    });
  }
  base::Problem problem = known.error();
  problem.accepted.clear();
  for (const sharpening::Stone& stone : catalogue.stones) {
    problem.accepted += (problem.accepted.empty() ? "" : ", ") + stone.name;
  }
  return base::failed(problem);
}

}  // namespace keenfall::workbench
