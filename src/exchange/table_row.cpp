#include "exchange/table_row.h"

#include "exchange/cell_words.h"
#include "exchange/edge_life_cell.h"
#include "exchange/mistyped_number.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <cmath>

namespace keenfall::exchange {

namespace {

constexpr std::size_t kLongestCell = 1000;  // characters

bool is_not_known(std::string_view text) {
  const std::string word = folded(text);
  return word.empty() || word == "na" || word == "n/a" || word == "–" || word == "—";
}

// Reads the cells of one row, remembering whether one it needs was refused.
class RowReading {
 public:
  RowReading(const Record& record, const RowFormat& format, ProblemList& problems)
      : format_(format), problems_(problems) {
    row_.at = {problems.current_file(), record.line, record.column};
    for (const ColumnDefinition& definition : column_definitions()) {
      const auto position = format.columns.positions[index_of(definition.column)];
      if (position && *position < record.cells.size()) take(definition, record.cells[*position]);
    }
  }

  void require_cells() {
    const bool is_reading = !row_[Column::reading].is_blank();
    const bool tells_event = !row_[Column::event].is_blank();
    const bool tells_anything = tells_event || !row_[Column::deviation].is_blank() ||
                                !row_[Column::note].is_blank() ||
                                !row_[Column::voided].is_blank() || tells_edge_life();
    for (const Column column : {Column::blade, Column::medium, Column::run}) require(column);
    if (is_reading || tells_event || !tells_anything) require(Column::cuts);
    if (!tells_anything) require(Column::reading);
  }

  void read_edge_life() {
    if (!tells_edge_life()) return;
    const RowCell& lasted = row_[Column::lasted];
    const RowCell& failed_by = row_[Column::failed_by];
    const auto life = edge_life_in(lasted.text, failed_by.text, format_.mark);
    if (!life) {
      is_refused_ = true;
      const Column column =
          life.error().place.column == "lasted" ? Column::lasted : Column::failed_by;
      base::Problem problem = life.error();
      problem.place.column = format_.columns.header_of(column);
      problems_.add(row_.origin_of(column), std::move(problem));
      return;
    }
    const bool is_open = life->is_open || format_.columns.has(Column::failed_by);
    if (!life->failed_by_cuts && !is_open) return ask_when_it_failed(lasted);
    row_.edge_life = trials::EdgeLife{.test = std::string(row_[Column::test].text),
                                      .lasted_cuts = life->lasted_cuts,
                                      .failed_by_cuts = life->failed_by_cuts,
                                      .level = row_[Column::test_level].number,
                                      .line = row_.at.line};
  }

  [[nodiscard]] std::optional<TableRow> result() const {
    return is_refused_ ? std::nullopt : std::optional(row_);
  }

  [[nodiscard]] const TableRow& row() const { return row_; }

 private:
  [[nodiscard]] bool tells_edge_life() const {
    return !row_[Column::lasted].is_blank() || !row_[Column::failed_by].is_blank();
  }

  void ask_when_it_failed(const RowCell& lasted) {
    is_refused_ = true;
    problems_.add_counted(
        "lasted alone",
        row_.origin_of(Column::lasted),
        {.kind = base::ProblemKind::missing,
         .sentence = "The edge lasted " + life_as_said(lasted.written) +
                     ", but whether it then failed, and by when, is not said.",
         .place = {.column = format_.columns.header_of(Column::lasted),
                   .found = excerpt(lasted.written)},
         .accepted = "40+ where it was never seen to fail, 40-50 where it failed in between, or a "
                     "column failed_by (left empty where it did not fail)"});
  }

  void take(const ColumnDefinition& definition, const Cell& cell) {
    if (cell.text.empty() && cell.fault.empty()) return;
    RowCell& kept = row_.cells[index_of(definition.column)];
    kept = {.text = cell.text,
            .number = std::nullopt,
            .written = cell.text,
            .line = cell.line,
            .column = cell.column};
    if (!cell.fault.empty()) {
      kept.written = cell.fault;
      refuse(definition, cell, std::string(cell.fault));
    } else if (cell.text.size() > kLongestCell && character_count(cell.text) > kLongestCell) {
      refuse(definition, cell, "The cell holds more than 1,000 characters.", "a shorter text");
    } else if (definition.column == Column::lasted && is_not_known(cell.text)) {
      kept = {};
    } else if (definition.content != CellContent::text) {
      take_number(definition, cell, kept);
    } else if (definition.column == Column::method &&
               motion_of(cell.text) != trials::Motion::not_recorded) {
      kept.text = word_for(motion_of(cell.text));
    }
  }

  void take_number(const ColumnDefinition& definition, const Cell& cell, RowCell& kept) {
    const std::string name(definition.name);
    const bool is_optional = index_of(definition.column) >= kRequiredColumnCount;
    if (is_optional && is_not_known(cell.text)) {
      kept = {};
      return;
    }
    std::string_view text = cell.text;
    if (definition.column == Column::reading) {
      text = without_question_marks(text);
      row_.is_question_marked = text.size() < cell.text.size();
      if (text.empty()) return refuse(definition, cell, std::string(kQuestionMarkAlone));
    }
    NumberCell number = number_cell(text, format_.mark);
    const HeaderUnit& unit = format_.columns.units[index_of(definition.column)];
    if (number.unit.empty()) {
      number.number *= unit.factor;
      number.unit = unit.name;
    }
    const bool has_letters_for_digits =
        number.fault != NumberFault::none
            ? looks_like_digits(text)
            : !is_unit_fitting(definition, number.unit) && is_mistyped(text, number.unit);
    if (has_letters_for_digits) {
      refuse(definition, cell, name + " " + letters_among_digits(cell.text));
    } else if (number.fault != NumberFault::none) {
      refuse(definition,
             cell,
             name + " must be a number; " + fault_in_words(number.fault, text, format_.mark) + "." +
                 way_out(number.fault, format_.mark));
    } else if (!is_unit_fitting(definition, number.unit)) {
      refuse(definition,
             cell,
             name + ": after the number stands " + in_quotes(number.unit) +
                 ", which does not belong " +
                 (definition.unit.empty()
                      ? "there."
                      : "there: the column is in " + std::string(definition.unit) + "."));
    } else if (const std::string fault = range_fault(definition, number.number); !fault.empty()) {
      refuse(definition, cell, name + " " + fault + ", not " + in_quotes(cell.text) + ".");
    } else {
      kept.number = number.number;
      kept.text = number.unit;
    }
  }

  // A reading's unit is checked with its kind; elsewhere only the column's own unit may be
  // repeated.
  static bool is_unit_fitting(const ColumnDefinition& definition, std::string_view unit) {
    if (unit.empty() || definition.column == Column::reading) return true;
    if (definition.column == Column::test_level && folded(unit) == "×") return true;
    return folded(unit) == folded(definition.unit) ||
           (definition.unit == "°" && (folded(unit) == "deg" || folded(unit) == "degrees"));
  }

  static std::string range_fault(const ColumnDefinition& definition, double number) {
    if (definition.content == CellContent::whole_number && number != std::floor(number)) {
      return "must be a whole number";
    }
    if (number < definition.lowest ||
        (number == definition.lowest && !definition.is_lowest_allowed)) {
      if (definition.lowest == 0) {
        return definition.is_lowest_allowed ? "cannot be negative" : "must be above zero";
      }
      return definition.column == Column::test_level ? "must be above 1" : "is too low";
    }
    if (number > definition.highest) {
      const bool is_angle = definition.unit == "°";
      return is_angle ? "is an angle per side and looks like an inclusive one (halve it)"
                      : "is too high";
    }
    return "";
  }

  void refuse(const ColumnDefinition& definition,
              const Cell& cell,
              std::string sentence,
              std::string_view accepted = {}) {
    if (index_of(definition.column) < kRequiredColumnCount) is_refused_ = true;
    // The cell is known to hold something, but nothing that can be used.
    RowCell& kept = row_.cells[index_of(definition.column)];
    kept.text = {};
    problems_.add({row_.at.file, cell.line, cell.column},
                  {.sentence = std::move(sentence),
                   .place = {.column = format_.columns.header_of(definition.column),
                             .found = excerpt(cell.text)},
                   .accepted = std::string(accepted.empty() ? definition.accepted : accepted)},
                  what_is_wrong(definition.column));
  }

  static Concerns what_is_wrong(Column column) {
    return column == Column::reading || column == Column::cuts ? Concerns::reading : Concerns::row;
  }

  void require(Column column) {
    if (!row_[column].is_blank()) return;
    is_refused_ = true;
    const ColumnDefinition& definition = definition_of(column);
    problems_.add(row_.at,
                  {.kind = base::ProblemKind::missing,
                   .sentence = std::string(definition.name) + " is empty; it must hold " +
                               std::string(definition.must_hold) + "." +
                               (column == Column::reading ? " Leave out rows without one." : ""),
                   .place = {.column = format_.columns.header_of(column)}},
                  what_is_wrong(column));
  }

  const RowFormat& format_;
  ProblemList& problems_;
  TableRow row_;
  bool is_refused_ = false;
};

}  // namespace

bool has_fitting_length(const Record& record, const RowFormat& format, ProblemList& problems) {
  const std::size_t wanted = format.columns.headers.size();
  const std::size_t found = record.cells.size();
  const bool is_too_long =
      found > wanted && std::ranges::any_of(record.cells.subspan(wanted),
                                            [](const Cell& cell) { return !cell.text.empty(); });
  if (found >= wanted && !is_too_long) return true;
  std::string sentence = "The row has " + std::to_string(found) + " cells where the header has " +
                         std::to_string(wanted) + ".";
  if (is_too_long && format.delimiter == ',') {
    sentence +=
        " A decimal comma, or a comma in a text, cuts a cell in two: write a decimal point, put "
        "the "
        "text in quotes, or separate the columns with semicolons.";
  }
  if (!is_too_long) sentence += " An empty cell still needs its separator.";
  problems.add(
      {problems.current_file(), record.line},
      {.sentence = std::move(sentence),
       .place = {.found = excerpt(record.cells.empty() ? "" : record.cells.front().text)}});
  return false;
}

std::optional<TableRow> read_row(const Record& record,
                                 const RowFormat& format,
                                 ProblemList& problems) {
  if (record.fault) {
    problems.add(
        {problems.current_file(), record.fault->cell.line},
        {.sentence = record.fault->sentence, .place = {.found = excerpt(record.fault->cell.text)}},
        record.fault->is_to_the_end ? Concerns::table : Concerns::row);
    return std::nullopt;
  }
  if (!has_fitting_length(record, format, problems)) return std::nullopt;
  RowReading reading(record, format, problems);
  reading.require_cells();
  reading.read_edge_life();
  return reading.result();
}

TableRow row_as_far_as_read(const Record& record, const RowFormat& format) {
  ProblemList passed_over;
  passed_over.begin_file("");
  return RowReading(record, format, passed_over).row();
}

}  // namespace keenfall::exchange
