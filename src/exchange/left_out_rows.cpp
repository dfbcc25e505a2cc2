#include "exchange/left_out_rows.h"

#include "exchange/cell_words.h"
#include "exchange/reading_unit.h"
#include "exchange/run_identity.h"

#include <algorithm>
#include <set>
#include <string_view>
#include <unordered_map>
#include <utility>
#include <vector>

namespace keenfall::exchange {

namespace {

constexpr std::array kSeriesColumns = {Column::unit, Column::thread, Column::thread_lot};

const std::string& of_series(const SeriesAsTold& told, Column column) {
  if (column == Column::unit) return told.unit;
  return column == Column::thread ? told.thread : told.thread_lot;
}

bool is_among(std::span<const Column> columns, Column column) {
  return std::ranges::find(columns, column) != columns.end();
}

// The kinds of the run's readings of which none says it.
std::set<const trials::ReadingKind*> kinds_without(Column column,
                                                   const RunDraft& draft,
                                                   std::span<const SeriesAsTold> told) {
  std::set<const trials::ReadingKind*> with;
  std::set<const trials::ReadingKind*> without;
  std::size_t last = told.size();
  for (const ReadingDraft& reading : draft.readings) {
    if (reading.reading.series == last) continue;
    last = reading.reading.series;
    const SeriesAsTold& series = told[last];
    (of_series(series, column).empty() ? without : with).insert(series.kind);
  }
  std::erase_if(without, [&with](const auto* kind) { return with.contains(kind); });
  return without;
}

bool is_missing(Column column, const RunDraft& draft, std::span<const SeriesAsTold> told) {
  if (column == Column::voided) return !draft.voided_reason;
  if (is_among(kSeriesColumns, column)) return !kinds_without(column, draft, told).empty();
  return (is_among(arm_columns(), column) || is_among(run_columns(), column)) &&
         draft[column].is_blank();
}

bool may_be_named_so(const RunDraft& draft, const RunDraft& names) {
  return std::ranges::none_of(name_columns(), [&draft, &names](Column column) {
    return says_otherwise(draft[column], names[column]);
  });
}

}  // namespace

// "mm" behind one reading says nothing of the other readings where they are a force.
bool LeftOutRows::Note::tells_unit_of(const trials::ReadingKind& kind) const {
  return says[index_of(Column::unit)] ||
         std::ranges::any_of(behind_readings, [&kind](const std::string& unit) {
           return unit_for_kind(unit, kind).has_value();
         });
}

void LeftOutRows::note(const TableRow& row, bool is_unit_its_own) {
  const bool has_all_names = std::ranges::none_of(
      name_columns(), [&row](Column column) { return row[column].text.empty(); });
  // Of rows that name no run for certain, only what they say counts.
  std::string key = has_all_names ? run_key_of(row) : "";
  for (const Column column : name_columns()) {
    if (!has_all_names) key += std::string(row[column].text) + '\x1F';
  }
  Note& note = notes_.try_emplace(std::move(key), Note{.names = {.first = row.at}}).first->second;
  note.has_all_names = has_all_names;
  const auto tell = [&note, &row](Column column) {
    note.names.told[index_of(column)] = told_cell(row, column);
  };
  std::ranges::for_each(name_columns(), tell);
  if (has_all_names) std::ranges::for_each(arm_columns(), tell);
  const auto say = [&note, &row](Column column) {
    if (!row[column].is_blank()) note.says[index_of(column)] = true;
  };
  std::ranges::for_each(arm_columns(), say);
  std::ranges::for_each(run_columns(), say);
  std::ranges::for_each(kSeriesColumns, say);
  if (reason_in(row[Column::voided].text)) say(Column::voided);
  const std::string_view behind = row[Column::reading].text;
  if (!behind.empty() && !is_unit_its_own) {
    note.behind_readings.insert(std::string(behind));
  }
}

void LeftOutRows::blame_runs(std::span<const RunDraft> drafts,
                             std::span<const SeriesAsTold> told,
                             ProblemList& problems) const {
  std::unordered_map<std::string, std::vector<const RunDraft*>> of_name;
  std::vector<const RunDraft*> all;
  for (const RunDraft& draft : drafts) {
    of_name[name_key_of(draft)].push_back(&draft);
    all.push_back(&draft);
  }
  for (const auto& [key, note] : notes_) {
    const auto named = of_name.find(name_key_of(note.names));
    if (note.has_all_names && named == of_name.end()) continue;
    for (const RunDraft* const draft : note.has_all_names ? named->second : all) {
      if (!may_be_named_so(*draft, note.names) || !may_be_one_run(*draft, note.names)) continue;
      if (const auto column = first_missing(*draft, note, told)) {
        blame(*draft, *column, note, problems);
      }
    }
  }
}

std::optional<Column> LeftOutRows::first_missing(const RunDraft& draft,
                                                 const Note& note,
                                                 std::span<const SeriesAsTold> told) {
  for (const ColumnDefinition& definition : column_definitions()) {
    const Column column = definition.column;
    if (note.says[index_of(column)] && is_missing(column, draft, told)) return column;
    if (column != Column::unit) continue;
    const auto without = kinds_without(column, draft, told);
    const auto tells_unit = [&note](const auto* kind) { return note.tells_unit_of(*kind); };
    if (std::ranges::any_of(without, tells_unit)) return column;
  }
  return std::nullopt;
}

void LeftOutRows::blame(const RunDraft& draft,
                        Column column,
                        const Note& note,
                        ProblemList& problems) {
  const Origin& said = note.names.first;
  problems.stand_in(draft.parts.all);
  problems.add(draft.first,
               {.kind = base::ProblemKind::missing,
                .sentence = run_in_words(draft) + " would miss its " +
                            std::string(definition_of(column).name) + ": only " +
                            problems.place_in_words(said) + " says it, which is left out."});
  problems.stand_nowhere();
}

void LeftOutRows::check_units(std::span<const RunDraft> drafts,
                              ReadingSeriesRegister& told,
                              ProblemList& problems) const {
  const auto is_told_of = [this](const trials::ReadingKind& kind) {
    return std::ranges::any_of(
        notes_, [&kind](const auto& note) { return note.second.tells_unit_of(kind); });
  };
  for (const RunDraft& draft : drafts) {
    for (const ReadingDraft& reading : draft.readings) {
      const SeriesAsTold& series = told.told()[reading.reading.series];
      if (!series.unit.empty() || !told.units_of(series.kind).empty()) continue;
      if (!is_told_of(*series.kind)) return;
      problems.add_general(
          {.kind = base::ProblemKind::missing,
           .sentence = "Only rows that are left out say the unit of the readings, so that of the "
                       "others cannot be told.",
           .accepted = "the unit in the header, as in reading (gf), or in every row"});
      return;
    }
  }
}

}  // namespace keenfall::exchange
