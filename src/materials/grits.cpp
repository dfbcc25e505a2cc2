#include "materials/grits.h"

#include "base/plain_number.h"

#include <algorithm>
#include <cmath>

namespace keenfall::materials {

namespace {

constexpr double kBeyondTheTable = 1.5;
constexpr double kSameSizeRatio = 1.15;

double distance_by_ratio(double one, double other) { return std::abs(std::log(one / other)); }

base::Problem system_not_said(const Grit& grit) {
  base::Problem problem{.kind = base::ProblemKind::bad_value,
                        .place = {.found = grit.as_written},
                        .accepted = "F1000, P1000, JIS 1000, CAMI 600 or a size such as 9 µm"};
  problem.sentence = "“" + grit.as_written +
                     "” does not say in which system it is a grit, so its size in µm is not known";
  const auto could_be = possible_sizes_um(grit.number.value_or(0));
  for (std::size_t i = 0; i < could_be.size(); ++i) {
    problem.sentence += i == 0 ? "; it could be " : ", ";
    problem.sentence += base::plain_number(could_be[i].median_um) + " µm (" +
                        std::string(in_words(could_be[i].system)) + ")";
  }
  return problem;
}

base::Problem not_in_table(const Grit& grit) {
  const std::string system(in_words(grit.system));
  return {.kind = base::ProblemKind::unknown_name,
          .sentence = "grit " + base::plain_number(grit.number.value_or(0)) + " of " + system +
                      " is not in the table of grits",
          .place = {.found = grit.as_written},
          .accepted = "a " + system + " number that `keenfall grits " + system + "` lists"};
}

base::Problem beyond(double size_um, const GritRow& last) {
  return {.kind = base::ProblemKind::bad_value,
          .sentence = base::plain_number(size_um) + " µm is beyond the grits of " +
                      std::string(in_words(last.system)) + "; its last is " +
                      base::plain_number(last.number) + " with " +
                      base::plain_number(last.median_um) + " µm"};
}

}  // namespace

std::string in_words(const Grit& grit) {
  if (grit.system == GritSystem::unknown || !grit.number) return grit.as_written;
  const std::string number = base::plain_number(*grit.number);
  const std::string system(in_words(grit.system));
  return grit.system == GritSystem::micrometres ? number + " µm" : system + " " + number;
}

const GritRow* find_grit(const Grit& grit) {
  const auto rows = known_grits();
  const auto found = std::ranges::find_if(rows, [&grit](const GritRow& row) {
    return row.system == grit.system && row.number == grit.number;
  });
  return found == rows.end() ? nullptr : &*found;
}

base::Result<double> to_micrometres(const Grit& grit) {
  if (grit.system == GritSystem::unknown || !grit.number) {
    return base::failed(system_not_said(grit));
  }
  if (grit.system == GritSystem::micrometres) return *grit.number;
  const GritRow* row = find_grit(grit);
  if (row == nullptr) return base::failed(not_in_table(grit));
  return row->median_um;
}

base::Result<NearestGrit> nearest_in_system(double size_um, GritSystem system) {
  if (!std::isfinite(size_um) || size_um <= 0) {
    return base::failed({.sentence = "a grain size must be above zero, not " +
                                     base::plain_number(size_um) + " µm"});
  }
  if (system == GritSystem::micrometres) {
    return NearestGrit{.grit = {.system = system,
                                .number = size_um,
                                .as_written = base::plain_number(size_um) + " µm"},
                       .median_um = size_um};
  }
  const GritRow* nearest = nullptr;
  for (const GritRow& row : known_grits()) {
    if (row.system != system) continue;
    if (nearest == nullptr || distance_by_ratio(row.median_um, size_um) <
                                  distance_by_ratio(nearest->median_um, size_um)) {
      nearest = &row;
    }
  }
  if (nearest == nullptr) {
    return base::failed({.sentence = "a size has no grit number where the system is unknown",
                         .accepted = "FEPA-F, FEPA-P, JIS, CAMI or µm"});
  }
  // A size beyond either end of the table is nearest to that end's row.
  if (distance_by_ratio(nearest->median_um, size_um) > std::log(kBeyondTheTable)) {
    return base::failed(beyond(size_um, *nearest));
  }
  return NearestGrit{.grit = {.system = system,
                              .number = nearest->number,
                              .as_written = std::string(in_words(system)) + " " +
                                            base::plain_number(nearest->number)},
                     .median_um = nearest->median_um,
                     .ratio = nearest->median_um / size_um};
}

std::vector<GritRow> possible_sizes_um(double bare_number) {
  std::vector<GritRow> rows;
  for (const GritRow& row : known_grits()) {
    if (row.number == bare_number) rows.push_back(row);
  }
  return rows;
}

SameFinish same_finish_size(const Grit& one, const Grit& other) {
  if (one.system == GritSystem::unknown || other.system == GritSystem::unknown) {
    return SameFinish::cannot_say;
  }
  if (one.system == other.system) {
    return one.number == other.number ? SameFinish::matched : SameFinish::differs;
  }
  const auto one_um = to_micrometres(one);
  const auto other_um = to_micrometres(other);
  if (!one_um || !other_um) return SameFinish::cannot_say;
  const bool near = distance_by_ratio(*one_um, *other_um) <= std::log(kSameSizeRatio);
  return near ? SameFinish::matched : SameFinish::differs;
}

}  // namespace keenfall::materials
