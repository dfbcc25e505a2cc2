#include "materials/microstructure.h"

#include "base/plain_number.h"
#include "materials/hardness.h"
#include "materials/microstructure_table.h"
#include "materials/steels.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>
#include <vector>

namespace keenfall::materials {

namespace {

std::size_t place_in_steel_table(const Microstructure& row) {
  const auto steels = known_steels();
  return static_cast<std::size_t>(
      std::ranges::distance(steels.begin(), std::ranges::find(steels, row.name, &Steel::name)));
}

const std::vector<Microstructure>& all_microstructures() {
  static const std::vector<Microstructure> rows = [] {
    std::vector<Microstructure> all = lean_microstructures();
    std::ranges::move(rich_microstructures(), std::back_inserter(all));
    for (Microstructure& row : all) {
      row.bulk_hv = vickers_from_rockwell_c(row.hardness_hrc).value();
    }
    std::ranges::sort(all, {}, place_in_steel_table);
    return all;
  }();
  return rows;
}

base::Problem no_microstructure(const Steel& steel, std::string_view asked) {
  std::string accepted;
  for (const Microstructure& row : all_microstructures()) {
    accepted += (accepted.empty() ? "" : ", ") + row.name;
  }
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "of " + std::string(steel.name) +
                      " there is no row that says how hard its matrix and its carbides are",
          .place = {.found = std::string(asked)},
          .accepted = accepted};
}

}  // namespace

std::span<const Microstructure> known_microstructures() { return all_microstructures(); }

base::Result<Microstructure> find_microstructure(std::string_view steel) {
  const auto found = find_steel(steel);
  if (!found) return base::failed(found.error());
  const auto& rows = all_microstructures();
  const auto row = std::ranges::find(rows, found->steel.name, &Microstructure::name);
  if (found->only_near || row == rows.end()) {
    return base::failed(no_microstructure(found->steel, steel));
  }
  return *row;
}

std::string beside_usual_hardness(const Microstructure& steel) {
  const auto found = find_steel(steel.name);
  if (!found || !found->steel.working_hardness) return "";
  const HardnessRange& usual = *found->steel.working_hardness;
  const bool is_softer = steel.hardness_hrc < usual.lo_hrc;
  if (!is_softer && steel.hardness_hrc <= usual.hi_hrc) return "";
  return (is_softer ? std::string("softer") : std::string("harder")) + " than the " +
         base::plain_number(usual.lo_hrc) + " to " + base::plain_number(usual.hi_hrc) +
         " HRC at which " + steel.name + " is usually used";
}

base::Result<Microstructure> at_hardness(const Microstructure& steel, double hrc) {
  constexpr double kFarthest = 6;
  constexpr double kSoftestOfTable = 40;  // E140's, as in hardness.h
  constexpr double kHardestOfTable = 68;
  const double softest = std::max(kSoftestOfTable, steel.hardness_hrc - kFarthest);
  const double hardest = std::min(kHardestOfTable, steel.hardness_hrc + kFarthest);
  if (!(hrc >= softest && hrc <= hardest)) {
    return base::failed(
        {.kind = base::ProblemKind::bad_value,
         .sentence = steel.name + " is known at " + base::plain_number(steel.hardness_hrc) +
                     " HRC and can be asked for from " + base::plain_number(softest) + " to " +
                     base::plain_number(hardest) + " HRC, not at " + base::plain_number(hrc) +
                     " HRC."});
  }
  return vickers_from_rockwell_c(hrc).transform([&](double bulk_hv) {
    Microstructure tempered = steel;
    const double share = bulk_hv / steel.bulk_hv;
    tempered.hardness_hrc = hrc;
    tempered.bulk_hv = bulk_hv;
    for (double* hv :
         {&tempered.matrix_hv, &tempered.matrix_hv_range.lo, &tempered.matrix_hv_range.hi}) {
      *hv *= share;
    }
    return tempered;
  });
}

}  // namespace keenfall::materials
