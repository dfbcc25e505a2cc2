#include "exchange/odd_units.h"

#include "exchange/text_lines.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <set>
#include <utility>

namespace keenfall::exchange {

namespace {

// Of one that names the unit of the run, and one that names another, neither is the odd one.
constexpr std::size_t kFewestToBeUsual = 2;

// How the readings of one kind in one run name their unit.
struct Naming {
  std::map<std::string, std::size_t> named;
  std::map<std::string, std::size_t> read_in;  // with those that name none; "": in the usual one
  std::string first;                           // "" where the run begins with one that names none
  std::size_t count = 0;

  void add(const std::string& unit) {
    if (count++ == 0) first = unit;
    if (!unit.empty()) ++named[unit];
    ++read_in[unit.empty() ? first : unit];
  }

  // Most are read in it; "": in the unit of other runs, or the kind's.
  [[nodiscard]] std::pair<std::string, std::size_t> usual() const {
    std::pair<std::string, std::size_t> usual;
    for (const auto& [unit, readings] : read_in) {
      if (readings > usual.second) usual = {unit, readings};
    }
    return usual;
  }
};

using NamingOfKinds = std::map<const trials::ReadingKind*, Naming>;

NamingOfKinds naming_in(const RunDraft& draft, const std::vector<SeriesAsTold>& told) {
  NamingOfKinds kinds;
  for (const ReadingDraft& draft_reading : draft.readings) {
    const SeriesAsTold& series = told[draft_reading.reading.series];
    kinds[series.kind].add(series.unit);
  }
  return kinds;
}

struct Odd {
  std::size_t draft = 0;
  std::size_t reading = 0;
  SeriesAsTold series;
  std::string usual;  // "": the others of the run name none
};

void find_odd_ones(const RunDraft& draft,
                   std::size_t place,
                   const std::vector<SeriesAsTold>& told,
                   std::vector<Odd>& odd) {
  const auto may_be_odd = [](const ReadingDraft& reading) { return reading.names_unit; };
  if (std::ranges::none_of(draft.readings, may_be_odd)) return;
  const NamingOfKinds kinds = naming_in(draft, told);
  for (std::size_t i = 0; i < draft.readings.size(); ++i) {
    const SeriesAsTold& series = told[draft.readings[i].reading.series];
    if (!draft.readings[i].names_unit || series.unit.empty()) continue;
    const Naming& naming = kinds.at(series.kind);
    const auto [usual, readings] = naming.usual();
    const bool is_single = naming.named.at(series.unit) == 1 && naming.read_in.at(series.unit) == 1;
    if (!is_single || usual == series.unit) continue;
    if (!usual.empty() && readings < kFewestToBeUsual) continue;
    odd.push_back({.draft = place, .reading = i, .series = series, .usual = usual});
  }
}

base::Problem odd_unit(const RunDraft& draft,
                       const Odd& odd,
                       const std::string& usual,
                       const std::string& header) {
  const std::string run = "run " + excerpt(draft[Column::run].text);
  const std::string others =
      odd.usual.empty() ? "the others of " + run + " name no unit and are taken as " + usual
                        : "the others of " + run + " are in " + usual;
  return {.kind = base::ProblemKind::conflicting,
          .sentence = "This reading says " + odd.series.unit + ", and " + others + ".",
          .place = {.column = header, .found = odd.series.unit},
          .accepted = "what was read in " + usual + "; or " + odd.series.unit +
                      " for all of them, if that is what they were read in"};
}

}  // namespace

void report_odd_units(std::vector<RunDraft>& drafts,
                      std::span<const std::string> headers,
                      ReadingSeriesRegister& told,
                      ProblemList& problems) {
  std::vector<Odd> odd;
  for (std::size_t i = 0; i < drafts.size(); ++i) find_odd_ones(drafts[i], i, told.told(), odd);
  for (const Odd& one : odd) told.count_unit(one.series.kind, one.series.unit, false);
  std::vector<Odd> not_odd;
  for (std::size_t i = odd.size(); i-- > 0;) {
    const Odd& one = odd[i];
    std::string usual = one.usual;
    if (usual.empty()) {
      const std::set<std::string> elsewhere = told.units_of(one.series.kind);
      usual = elsewhere.empty() ? one.series.kind->unit : *elsewhere.begin();
      if (elsewhere.size() > 1 || usual == one.series.unit) {
        not_odd.push_back(one);
        continue;
      }
    }
    RunDraft& draft = drafts[one.draft];
    const auto reading = draft.readings.begin() + static_cast<std::ptrdiff_t>(one.reading);
    const TablePart part{reading->file, reading->reading.line, reading->column};
    base::Problem problem = odd_unit(draft, one, usual, headers[reading->file]);
    problems.blame({&part, 1}, problem.sentence, headers[reading->file]);
    problems.add({part.file, part.line, part.column}, std::move(problem), Concerns::others);
    draft.readings.erase(reading);
  }
  for (const Odd& one : not_odd) told.count_unit(one.series.kind, one.series.unit, true);
}

}  // namespace keenfall::exchange
