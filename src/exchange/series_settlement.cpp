#include "exchange/series_settlement.h"

#include "exchange/reading_unit.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <cstddef>
#include <map>
#include <unordered_map>
#include <utility>

namespace keenfall::exchange {

namespace {

using NamesOfKind = std::map<const trials::ReadingKind*, std::set<std::string>>;
using KindAndThread = std::pair<const trials::ReadingKind*, std::string>;

struct UsedSeries {
  std::size_t index = 0;  // into what was told
  Origin first;           // the reading that first uses it
  SeriesAsTold told;
};

std::vector<UsedSeries> series_used_by(const std::vector<ReadingDraft>& readings,
                                       const std::vector<SeriesAsTold>& told) {
  std::vector<UsedSeries> used;
  std::unordered_map<std::size_t, std::size_t> seen;
  for (const ReadingDraft& draft : readings) {
    const std::size_t series = draft.reading.series;
    if (!used.empty() && used.back().index == series) continue;
    if (!seen.emplace(series, used.size()).second) continue;
    used.push_back({.index = series,
                    .first = {draft.file, draft.reading.line, draft.column},
                    .told = told[series]});
  }
  return used;
}

std::string list_of(const std::set<std::string>& names) {
  std::string list;
  for (const std::string& name : names) list += (list.empty() ? "" : " or ") + excerpt(name);
  return list;
}

}  // namespace

void SeriesSettlement::report_undecided(Origin at,
                                        const char* column,
                                        const std::set<std::string>& candidates) {
  problems_.add(at,
                {.kind = base::ProblemKind::missing,
                 .sentence = std::string(column) +
                             " is empty here, and other rows of this run name more than one.",
                 .place = {.column = column},
                 .accepted = list_of(candidates)});
}

std::string SeriesSettlement::only_unit(const SeriesAsTold& told,
                                        const std::set<std::string>& of_run,
                                        Origin at) {
  const std::set<std::string> units = of_run.empty() ? register_.units_of(told.kind) : of_run;
  if (units.empty()) {
    remarks_.insert("No unit is given for the " + told.kind->words + ": taken as " +
                    told.kind->unit + ".");
    return told.kind->unit;
  }
  if (units.size() > 1) {
    report_undecided(at, "unit", units);
  } else if (of_run.empty()) {
    remarks_.insert("Where no unit is given for the " + told.kind->words + ", it is taken as " +
                    *units.begin() + ", as in the other runs.");
  }
  return *units.begin();
}

void SeriesSettlement::fill_blanks(std::vector<ReadingDraft>& readings) {
  std::vector<UsedSeries> used = series_used_by(readings, register_.told());
  NamesOfKind threads;
  NamesOfKind units;
  for (const UsedSeries& series : used) {
    if (!series.told.thread.empty()) threads[series.told.kind].insert(series.told.thread);
    if (!series.told.unit.empty()) units[series.told.kind].insert(series.told.unit);
  }
  std::map<KindAndThread, std::set<std::string>> lots;
  for (UsedSeries& series : used) {
    SeriesAsTold& told = series.told;
    if (told.unit.empty()) told.unit = only_unit(told, units[told.kind], series.first);
    if (const auto& named = threads[told.kind]; told.thread.empty() && !named.empty()) {
      if (named.size() > 1) report_undecided(series.first, "thread", named);
      told.thread = *named.begin();
    }
    if (!told.thread_lot.empty()) lots[{told.kind, told.thread}].insert(told.thread_lot);
  }
  std::unordered_map<std::size_t, std::size_t> filled;
  for (UsedSeries& series : used) {
    SeriesAsTold& told = series.told;
    const std::set<std::string>& named = lots[{told.kind, told.thread}];
    if (told.thread_lot.empty() && !named.empty()) {
      if (named.size() > 1) report_undecided(series.first, "thread_lot", named);
      told.thread_lot = *named.begin();
    }
    filled[series.index] = register_.index_of_told(told);
  }
  for (ReadingDraft& draft : readings) draft.reading.series = filled[draft.reading.series];
}

void SeriesSettlement::settle(trials::Trial& trial) {
  const std::vector<SeriesAsTold>& told = register_.told();
  std::map<SeriesAsTold, std::size_t> settled;  // without the unit
  std::map<KindAndThread, std::string> unit_of;
  std::vector<std::optional<std::size_t>> series_of(told.size());
  for (trials::Run& run : trial.runs) {
    for (trials::Reading& reading : run.readings) {
      const SeriesAsTold& from = told[reading.series];
      std::optional<std::size_t>& to = series_of[reading.series];
      const std::string& unit =
          unit_of.emplace(KindAndThread{from.kind, from.thread}, from.unit).first->second;
      if (!to) {
        const SeriesAsTold key{
            .kind = from.kind, .unit = "", .thread = from.thread, .thread_lot = from.thread_lot};
        const auto [place, is_new] = settled.emplace(key, trial.series.size());
        if (is_new) {
          trial.series.push_back({.kind = *from.kind,
                                  .unit = unit,
                                  .thread = from.thread,
                                  .thread_lot = from.thread_lot});
        }
        to = place->second;
      }
      if (from.unit != unit) {
        remarks_.insert("Readings of " + from.kind->name + " in " + from.unit +
                        " were converted to " + unit + ", the unit met first.");
        reading.reading = converted_reading(reading.reading, from.unit, unit);
      }
      reading.series = *to;
    }
  }
  remark(trial);
}

void SeriesSettlement::remark(trials::Trial& trial) const {
  const auto append = [&trial](const std::string& sentence) { trial.remarks.push_back(sentence); };
  std::ranges::for_each(register_.remarks(), append);
  std::ranges::for_each(remarks_, append);
}

}  // namespace keenfall::exchange
