#include "exchange/reading_series_register.h"

#include "base/plain_number.h"
#include "exchange/cell_words.h"
#include "exchange/kind_definition.h"
#include "exchange/mistyped_number.h"
#include "exchange/reading_unit.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <utility>

namespace keenfall::exchange {

namespace {

std::string zero_refusal(const trials::ReadingKind& kind) {
  const bool is_known = trials::find_reading_kind(kind.name) != nullptr;
  return "A " + kind.words + " of zero cannot be; " +
         (is_known ? "leave the row out if nothing was read."
                   : "if it means less than the smallest step of the instrument, say so in the "
                     "definition of the kind: zero=below: and that step.");
}

Concerns concerns(Column column) {
  return column == Column::reading ? Concerns::reading : Concerns::row;
}

std::string kinds_in_unit(std::string_view unit) {
  std::string names;
  for (const trials::ReadingKind& kind : trials::known_reading_kinds()) {
    if (!unit_for_kind(unit, kind)) continue;
    names += (names.empty() ? "" : ", ") + kind.name;
  }
  return names;
}

}  // namespace

ReadingSeriesRegister::ReadingSeriesRegister(const TableOptions& options, ProblemList& problems)
    : options_(options), problems_(problems) {}

void ReadingSeriesRegister::remark_once(const std::string& remark) {
  if (std::ranges::find(remarks_, remark) == remarks_.end()) remarks_.push_back(remark);
}

const trials::ReadingKind* ReadingSeriesRegister::kind_of(const TableRow& row,
                                                          const MatchedColumns& file_columns) {
  const RowCell& cell = row[Column::kind];
  const std::string_view unit =
      row[Column::unit].is_blank() ? row[Column::reading].text : row[Column::unit].text;
  const std::string header = file_columns.header_of(Column::kind);
  if (!cell.is_blank()) {
    const trials::ReadingKind* const kind = find_kind(cell.text, options_.defined_kinds);
    if (kind != nullptr) return kind;
    problems_.add_counted(
        "kind" + folded(cell.text),
        row.origin_of(Column::kind),
        {.kind = base::ProblemKind::unknown_name,
         .sentence = in_quotes(cell.text) + " is no kind of reading known here.",
         .place = {.column = header, .found = excerpt(cell.text)},
         .accepted = list_of_kinds(options_.defined_kinds) + ", or your own by --define-kind"});
    return nullptr;
  }
  if (!options_.default_kind.empty())
    return find_kind(options_.default_kind, options_.defined_kinds);
  if (options_.defined_kinds.size() == 1) return &options_.defined_kinds.front();
  if (options_.defined_kinds.empty() && (unit.empty() || is_force_unit(unit))) {
    remark_once("No kind of reading is named: taken as thread push readings.");
    return trials::find_reading_kind("thread_push");
  }
  const std::string suitable = kinds_in_unit(unit);
  const Column unit_column = row[Column::unit].is_blank() ? Column::reading : Column::unit;
  const bool is_no_unit = !unit.empty() && suitable.empty();
  problems_.add_counted(
      "no kind in " + std::string(unit),
      unit.empty() ? row.at : row.origin_of(unit_column),
      {.kind = base::ProblemKind::missing,
       .sentence =
           (is_no_unit
                ? in_quotes(unit) + " is the unit of no kind of reading known here, and "
                                    "the kind is not named. Correct the unit, or say "
                                    "the kind for the whole table with --kind, or in a "
                                    "column kind."
                : "The kind of reading is not named. Say it for the whole table "
                  "with --kind, or in a column kind" +
                      (unit.empty() ? "."
                                    : "; in " + excerpt(unit) + " are read: " + suitable + ".")),
       .place = {.column = unit.empty() ? "" : file_columns.header_of(unit_column),
                 .found = excerpt(unit)},
       .accepted = list_of_kinds(options_.defined_kinds)},
      unit_column == Column::reading && !unit.empty() ? Concerns::reading : Concerns::row);
  return nullptr;
}

std::optional<std::string> ReadingSeriesRegister::unit_of(const TableRow& row,
                                                          const trials::ReadingKind& kind,
                                                          const MatchedColumns& file_columns) {
  std::string unit;
  for (const Column column : {Column::unit, Column::reading}) {
    const RowCell& cell = row[column];
    if (cell.text.empty()) continue;
    const auto named = unit_for_kind(cell.text, kind);
    base::Problem problem{
        .place = {.column = file_columns.header_of(column), .found = excerpt(cell.written)}};
    if (!named) {
      problem.sentence = "A " + kind.words + " cannot be in " + in_quotes(cell.text) + ".";
      problem.accepted = kind.unit + " or a unit that converts to it";
      problems_.add_counted(kind.name + "in" + std::string(cell.text),
                            row.origin_of(column),
                            problem,
                            concerns(column));
      return std::nullopt;
    }
    if (!unit.empty() && unit != *named) {
      problem.kind = base::ProblemKind::conflicting;
      problem.sentence = "The reading is in " + in_quotes(cell.text) +
                         ", but the unit column says " + in_quotes(row[Column::unit].text) + ".";
      problems_.add(row.origin_of(column), problem, concerns(column));
      return std::nullopt;
    }
    unit = *named;
  }
  return unit;
}

bool ReadingSeriesRegister::is_size_taken(const TableRow& row,
                                          const trials::ReadingKind& kind,
                                          const std::string& unit,
                                          const MatchedColumns& file_columns) {
  const RowCell& cell = row[Column::reading];
  const double reading = cell.number.value_or(0);
  const std::string found = excerpt(cell.written);
  base::Problem problem{
      .place = {.column = file_columns.header_of(Column::reading), .found = found},
      .accepted = "a number above zero, such as 104"};
  if (reading < 0) {
    problem.sentence = "A reading cannot be negative, as " + in_quotes(found) + " is.";
  } else if (reading == 0 && kind.zero == trials::ZeroReading::refused) {
    problem.sentence = zero_refusal(kind);
  } else if (kind.largest &&
             (unit.empty() ? reading : converted_reading(reading, unit, kind.unit)) >
                 *kind.largest) {
    const std::string largest = base::plain_number(*kind.largest) + " " + kind.unit;
    problem.sentence = "A " + kind.words + " of " + in_quotes(found) +
                       " is above the largest possible, " + largest + ".";
    problem.accepted = "0 to " + largest;
  } else {
    return true;
  }
  problems_.add(row.origin_of(Column::reading), problem, Concerns::reading);
  return false;
}

bool ReadingSeriesRegister::is_in_digits(const TableRow& row, const MatchedColumns& file_columns) {
  const RowCell& cell = row[Column::reading];
  const bool is_unit = std::ranges::any_of(
      options_.defined_kinds, [&cell](const auto& kind) { return kind.unit == cell.text; });
  if (is_unit || !is_mistyped(cell.written, cell.text)) return true;
  problems_.add(
      row.origin_of(Column::reading),
      {.sentence = "reading " + letters_among_digits(cell.written),
       .place = {.column = file_columns.header_of(Column::reading), .found = excerpt(cell.written)},
       .accepted = "a number above zero, such as 104"},
      Concerns::reading);
  return false;
}

std::optional<trials::Reading> ReadingSeriesRegister::take(const TableRow& row,
                                                           const MatchedColumns& file_columns) {
  if (!is_in_digits(row, file_columns)) return std::nullopt;
  const trials::ReadingKind* const kind = kind_of(row, file_columns);
  if (kind == nullptr) return std::nullopt;
  const auto unit = unit_of(row, *kind, file_columns);
  if (!unit || !is_size_taken(row, *kind, *unit, file_columns)) return std::nullopt;
  if (!unit->empty()) ++units_told_[kind][*unit];
  trials::Reading reading{
      .series = index_of_told({.kind = kind,
                               .unit = *unit,
                               .thread = std::string(row[Column::thread].text),
                               .thread_lot = std::string(row[Column::thread_lot].text)}),
      .cuts = row[Column::cuts].number.value_or(0),
      .reading = row[Column::reading].number.value_or(0),
      .station = std::string(row[Column::station].text),
      .struck_reason = reason_in(row[Column::struck].text),
      .doubtful_reason = reason_in(row[Column::doubtful].text),
      .line = row.at.line};
  if (row.is_question_marked && !reading.doubtful_reason) {
    reading.doubtful_reason = kQuestionMarkReason;
  }
  if (const auto& repeat = row[Column::repeat].number) reading.repeat = static_cast<int>(*repeat);
  return reading;
}

std::size_t ReadingSeriesRegister::index_of_told(const SeriesAsTold& told) {
  const auto [place, is_new] = index_.emplace(told, told_.size());
  if (is_new) told_.push_back(told);
  return place->second;
}

std::set<std::string> ReadingSeriesRegister::units_of(const trials::ReadingKind* kind) const {
  std::set<std::string> units;
  const auto told = units_told_.find(kind);
  if (told == units_told_.end()) return units;
  for (const auto& [unit, count] : told->second) {
    if (count > 0) units.insert(unit);
  }
  return units;
}

void ReadingSeriesRegister::count_unit(const trials::ReadingKind* kind,
                                       const std::string& unit,
                                       bool counts) {
  std::size_t& count = units_told_.at(kind).at(unit);
  counts ? ++count : --count;
}

}  // namespace keenfall::exchange
