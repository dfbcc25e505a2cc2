#include "notebook/run_growth.h"

#include "base/plain_number.h"

#include <cstddef>
#include <utility>
#include <vector>

namespace keenfall::notebook {

namespace {

void strike_as(std::optional<std::string>& reason, const std::optional<std::string>& met) {
  if (!reason) reason = met;
}

template <class Part>
concept CanBeStruck = requires(Part part) {
  part.struck_reason;
};

// The kept part with a strike of the other; nothing where they are not the same part.
template <class Part>
std::optional<Part> joined(const Part& kept, const Part& met) {
  return kept == met ? std::optional<Part>(kept) : std::nullopt;
}

template <CanBeStruck Part>
std::optional<Part> joined(const Part& kept, const Part& met) {
  Part both = met;
  both.line = kept.line;
  both.struck_reason = kept.struck_reason;
  if (both != kept) return std::nullopt;
  strike_as(both.struck_reason, met.struck_reason);
  return both;
}

// All parts of the longer list, those of the shorter joined into them; nothing where the shorter
// has one that the longer has not, or has them in another order.
template <class Part>
std::optional<std::vector<Part>> with_all_of(const std::vector<Part>& longer,
                                             const std::vector<Part>& shorter,
                                             bool is_longer_kept) {
  std::vector<Part> all;
  std::size_t met = 0;
  for (const Part& part : longer) {
    std::optional<Part> both;
    if (met < shorter.size()) {
      both = is_longer_kept ? joined(part, shorter[met]) : joined(shorter[met], part);
    }
    if (both) ++met;
    all.push_back(both ? *both : part);
  }
  if (met < shorter.size()) return std::nullopt;
  return all;
}

// Joins the lists in `kept`; false where they contradict.
template <class Part>
bool join(std::vector<Part>& kept, const std::vector<Part>& met, MayHaveLess may_have_less) {
  auto all = with_all_of(met, kept, false);
  if (!all && may_have_less == MayHaveLess::yes) all = with_all_of(kept, met, true);
  if (all) kept = std::move(*all);
  return all.has_value();
}

bool join(std::string& kept, const std::string& met) {
  if (kept.empty()) kept = met;
  return met.empty() || kept == met;
}

template <class T>
bool join(std::optional<T>& kept, const std::optional<T>& met) {
  if (!kept) kept = met;
  return !met || kept == met;
}

// The first reading of the kept run that the other has not at its place.
std::string first_other_reading(const trials::Run& kept, const trials::Run& met) {
  std::size_t next = 0;
  for (const trials::Reading& reading : kept.readings) {
    std::size_t found = next;
    while (found < met.readings.size() && !joined(reading, met.readings[found])) ++found;
    if (found == met.readings.size()) {
      return "reads " + base::plain_number(reading.reading) + " at " +
             base::plain_number(reading.cuts);
    }
    next = found + 1;
  }
  return "has other readings";
}

}  // namespace

Growth growth_of(const trials::Run& kept, const trials::Run& met, MayHaveLess may_have_less) {
  Growth growth{.joined = kept};
  trials::Run& run = growth.joined;
  if (kept.arm != met.arm || kept.specimen != met.specimen) {
    growth.contradiction = "is of another edge, medium or way of cutting";
  } else if (!join(run.readings, met.readings, may_have_less)) {
    growth.contradiction = first_other_reading(kept, met);
  } else if (!join(run.edge_lives, met.edge_lives, may_have_less)) {
    growth.contradiction = "lasted otherwise";
  } else if (!join(run.events, met.events, may_have_less) ||
             !join(run.deviations, met.deviations, may_have_less) ||
             !join(run.notes, met.notes, may_have_less)) {
    growth.contradiction = "has other events or notes";
  } else if (!join(run.block, met.block) || !join(run.order, met.order) ||
             !join(run.date, met.date) || !join(run.operator_name, met.operator_name) ||
             !join(run.medium_lot, met.medium_lot) ||
             !join(run.sharpenings_since_new, met.sharpenings_since_new)) {
    growth.contradiction = "has another block, order, date, lot or person";
  }
  strike_as(run.voided_reason, met.voided_reason);
  return growth;
}

bool are_surely_one(const trials::Run& kept, const trials::Run& met) {
  const bool both_read = !kept.readings.empty() && !met.readings.empty();
  const bool both_tested = !kept.edge_lives.empty() && !met.edge_lives.empty();
  return (both_read || both_tested) && !growth_of(kept, met, MayHaveLess::yes).contradiction;
}

}  // namespace keenfall::notebook
