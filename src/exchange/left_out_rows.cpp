#include "exchange/left_out_rows.h"

#include "exchange/cell_words.h"
#include "exchange/mistyped_number.h"
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

// Readings of a kind of which no reading of the run says it.
bool has_readings_without(Column column,
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
  return std::ranges::any_of(without, [&with](const auto* kind) { return !with.contains(kind); });
}

bool is_missing(Column column, const RunDraft& draft, std::span<const SeriesAsTold> told) {
  if (column == Column::voided) return !draft.voided_reason;
  if (is_among(kSeriesColumns, column)) return has_readings_without(column, draft, told);
  return (is_among(arm_columns(), column) || is_among(run_columns(), column)) &&
         draft[column].is_blank();
}

bool may_be_named_so(const RunDraft& draft, const RunDraft& names) {
  return std::ranges::none_of(name_columns(), [&draft, &names](Column column) {
    return says_otherwise(draft[column], names[column]);
  });
}

}  // namespace

void LeftOutRows::note(const TableRow& row) {
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
  // "12O" is a mistyped number and names no unit.
  if (!behind.empty() && !looks_like_digits(behind)) note.says[index_of(Column::unit)] = true;
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
  const bool is_said = std::ranges::any_of(
      notes_, [](const auto& note) { return note.second.says[index_of(Column::unit)]; });
  if (!is_said) return;
  for (const RunDraft& draft : drafts) {
    for (const ReadingDraft& reading : draft.readings) {
      const SeriesAsTold& series = told.told()[reading.reading.series];
      if (!series.unit.empty() || !told.units_of(series.kind).empty()) continue;
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
