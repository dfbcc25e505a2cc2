#include "exchange/named_numbers.h"

#include "base/plain_number.h"
#include "exchange/delimited_text.h"
#include "exchange/number_cell.h"
#include "exchange/text_file.h"

#include <algorithm>
#include <set>
#include <utility>

namespace keenfall::exchange {

namespace {

using base::Problem;
using base::ProblemKind;

constexpr std::string_view kNameColumn = "name";
constexpr std::size_t kNoColumn = static_cast<std::size_t>(-1);

std::string range_in_words(const NumberColumn& column) {
  return "a number " + std::string(column.is_lowest_accepted ? "from " : "above ") +
         base::plain_number(column.lowest) +
         (column.highest < 1e12 ? " to " + base::plain_number(column.highest) : "");
}

std::string names_in_words(std::span<const NumberColumn> columns) {
  std::string names(kNameColumn);
  for (const NumberColumn& column : columns) names += ", " + column.name;
  return names;
}

class ConstantsReader {
 public:
  ConstantsReader(std::string file_name, std::span<const NumberColumn> columns)
      : file_name_(std::move(file_name)), columns_(columns) {}

  base::ResultOrProblems<std::vector<NamedNumbers>> read(std::string_view text) {
    // One column of names alone has no delimiter, and is then told what is missing.
    const char delimiter = recognise_delimiter(text).value_or(',');
    delimiter_ = delimiter;
    mark_ = mark_of(text, delimiter);
    DelimitedReader reader(text, delimiter);
    const auto header = reader.next();
    if (!header) {
      add({.kind = ProblemKind::missing,
           .sentence = "The table is empty.",
           .accepted = "a first row with the columns " + names_in_words(columns_)});
      return tl::unexpected(problems_);
    }
    take_header(*header);
    if (!problems_.empty()) return tl::unexpected(problems_);
    while (const auto record = reader.next()) take_row(*record);
    if (rows_.empty() && problems_.empty()) {
      add({.kind = ProblemKind::missing, .sentence = "The table has no row under its header."});
    }
    if (!problems_.empty()) return tl::unexpected(problems_);
    return rows_;
  }

 private:
  // "1,5" in a table of commas is two cells, so that only other delimiters leave a choice.
  static DecimalMark mark_of(std::string_view text, char delimiter) {
    if (delimiter == ',') return DecimalMark::point;
    DecimalTally tally;
    DelimitedReader reader(text, delimiter);
    (void)reader.next();
    while (const auto record = reader.next()) {
      for (const Cell& cell : record->cells) tally.add(cell.text, cell.line, "");
    }
    return tally.decision() == DecimalMark::comma ? DecimalMark::comma : DecimalMark::point;
  }

  void add(Problem problem) {
    problem.place.file = file_name_;
    problems_.push_back(std::move(problem));
  }

  void take_header(const Record& header) {
    place_.assign(columns_.size(), kNoColumn);
    is_named_.clear();
    for (std::size_t i = 0; i < header.cells.size(); ++i) {
      const std::string name(header.cells[i].text);
      is_named_.push_back(!name.empty());
      if (name.empty()) continue;
      std::size_t& place = name == kNameColumn ? name_place_ : place_of(name);
      if (&place == &unknown_) {
        add({.kind = ProblemKind::unknown_name,
             .sentence = "No constant is called “" + name + "”.",
             .place = {.line = header.line, .column = name, .found = name},
             .accepted = names_in_words(columns_)});
      } else if (place != kNoColumn) {
        add({.kind = ProblemKind::conflicting,
             .sentence = "The column " + name + " is there twice.",
             .place = {.line = header.line, .column = name},
             .accepted = "each column once"});
      }
      place = i;
    }
    if (name_place_ == kNoColumn) missing_column(header.line, std::string(kNameColumn));
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (place_[i] == kNoColumn && !columns_[i].otherwise) {
        missing_column(header.line, columns_[i].name);
      }
    }
  }

  std::size_t& place_of(const std::string& name) {
    const auto column = std::ranges::find(columns_, name, &NumberColumn::name);
    if (column == columns_.end()) return unknown_;
    return place_[static_cast<std::size_t>(column - columns_.begin())];
  }

  void missing_column(std::size_t line, const std::string& name) {
    add({.kind = ProblemKind::missing,
         .sentence = "The column " + name + " is not there.",
         .place = {.line = line, .column = name},
         .accepted = names_in_words(columns_)});
  }

  void take_row(const Record& record) {
    if (record.fault) {
      add({.kind = ProblemKind::bad_value,
           .sentence = record.fault->sentence,
           .place = {.line = record.fault->cell.line,
                     .found = std::string(record.fault->cell.text)}});
      return;
    }
    NamedNumbers row{.name = std::string(text_at(record, name_place_)), .line = record.line};
    if (row.name.empty()) {
      add({.kind = ProblemKind::missing,
           .sentence = "The row has no name.",
           .place = {.line = record.line, .column = std::string(kNameColumn)},
           .accepted = "a name, by which it is asked for"});
    } else if (!names_.insert(row.name).second) {
      add({.kind = ProblemKind::conflicting,
           .sentence = "“" + row.name + "” is there twice.",
           .place = {.line = record.line, .column = std::string(kNameColumn), .found = row.name},
           .accepted = "each name once"});
    }
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      row.numbers.push_back(number_in(record, columns_[i], text_at(record, place_[i])));
    }
    refuse_cells_under_no_name(record);
    rows_.push_back(std::move(row));
  }

  void refuse_cells_under_no_name(const Record& record) {
    for (std::size_t i = 0; i < record.cells.size(); ++i) {
      const std::string found(record.cells[i].text);
      if (found.empty() || (i < is_named_.size() && is_named_[i])) continue;
      add({.kind = ProblemKind::bad_value,
           .sentence = "Cell " + std::to_string(i + 1) + ", “" + found +
                       "”, stands under no column's name.",
           .place = {.line = record.line, .found = found},
           .accepted = delimiter_ == ','
                           ? "cells under named columns only, with decimal points: “1,5” is two "
                             "cells where commas part them (semicolons would leave it one)"
                           : "cells under named columns only"});
    }
  }

  static std::string_view text_at(const Record& record, std::size_t place) {
    return place < record.cells.size() ? record.cells[place].text : std::string_view();
  }

  double number_in(const Record& record, const NumberColumn& column, std::string_view text) {
    if (text.empty() && column.otherwise) return *column.otherwise;
    std::string sentence;
    double number = 0;
    if (text.empty()) {
      sentence = column.name + " is not said.";
    } else {
      const NumberCell cell = number_cell(text, mark_);
      number = cell.number;
      const bool in_range =
          (column.is_lowest_accepted ? number >= column.lowest : number > column.lowest) &&
          number <= column.highest;
      if (cell.fault != NumberFault::none) {
        sentence = fault_in_words(cell.fault, text, mark_) + ".";
      } else if (!cell.unit.empty()) {
        sentence = "“" + std::string(text) +
                   "” is more than a number; the unit stands in the column's name.";
      } else if (!in_range) {
        sentence = "“" + std::string(text) + "” is out of the range of " + column.name + ".";
      }
    }
    if (!sentence.empty()) {
      add({.kind = text.empty() ? ProblemKind::missing : ProblemKind::bad_value,
           .sentence = sentence,
           .place = {.line = record.line, .column = column.name, .found = std::string(text)},
           .accepted = range_in_words(column)});
    }
    return number;
  }

  std::string file_name_;
  std::span<const NumberColumn> columns_;
  char delimiter_ = ',';
  DecimalMark mark_ = DecimalMark::point;
  std::vector<bool> is_named_;  // of the header's cells
  std::size_t name_place_ = kNoColumn;
  std::size_t unknown_ = kNoColumn;
  std::vector<std::size_t> place_;
  std::set<std::string> names_;
  std::vector<NamedNumbers> rows_;
  std::vector<Problem> problems_;
};

}  // namespace

base::ResultOrProblems<std::vector<NamedNumbers>> named_numbers(
    std::string_view text, const std::string& file_name, std::span<const NumberColumn> columns) {
  return ConstantsReader(file_name, columns).read(text);
}

base::ResultOrProblems<std::vector<NamedNumbers>> named_numbers_in_file(
    const std::string& path, std::span<const NumberColumn> columns) {
  const auto bytes = read_text_file(path);
  if (!bytes) return base::failed_by(bytes.error());
  const auto text = text_of(*bytes, path);
  if (!text) return base::failed_by(text.error());
  return named_numbers(*text, path, columns);
}

}  // namespace keenfall::exchange
