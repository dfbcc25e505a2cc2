#include "exchange/wide_header.h"

#include "exchange/cell_words.h"
#include "exchange/text_lines.h"

#include <algorithm>
#include <array>
#include <span>

namespace keenfall::exchange {

namespace {

// What concerns one run only: an empty cell is empty, whatever stands to its left.
constexpr std::array kOwnCellOnly = {Column::order,
                                     Column::sharpenings_since_new,
                                     Column::event,
                                     Column::struck,
                                     Column::doubtful,
                                     Column::deviation,
                                     Column::note,
                                     Column::voided,
                                     Column::lasted,
                                     Column::failed_by,
                                     Column::repeat};

// Told once for a column, in a row of their own.
constexpr std::array kToldOnce = {Column::note,
                                  Column::voided,
                                  Column::deviation,
                                  Column::event,
                                  Column::lasted,
                                  Column::failed_by,
                                  Column::test,
                                  Column::test_level};

// Of one series or reading, not of the run.
constexpr std::array kNotOfTheRun = {Column::station,
                                     Column::repeat,
                                     Column::kind,
                                     Column::unit,
                                     Column::thread,
                                     Column::thread_lot,
                                     Column::struck,
                                     Column::doubtful};

constexpr std::array kNeeded = {Column::blade, Column::medium, Column::run};

bool is_one_of(std::span<const Column> columns, Column column) {
  return std::ranges::find(columns, column) != columns.end();
}

}  // namespace

std::span<const Column> needed_in_wide_tables() { return kNeeded; }

ExpandedCell expanded(const GridRow& row, std::size_t c) {
  const GridCell& cell = row.at(c);
  return {.text = cell.text, .line = row.line, .column = c + 1, .fault = cell.fault, .header = {}};
}

bool WideHeader::add(const GridRow& row, const HeaderMeaning& meaning) {
  width_ = std::max(width_, row.cells.size());
  if (meaning.column == Column::cuts) {
    cuts_label_ = row.at(label_column_).text;
    return true;
  }
  if (meaning.column == Column::reading) {
    reading_unit_ = meaning.unit.name;
    return true;
  }
  return labels_.emplace(meaning.column, Label{.row = &row, .unit = meaning.unit}).second;
}

std::size_t WideHeader::holder_of(Column column, std::size_t c) {
  const GridRow& row = row_of(column);
  if (!row.at(c).is_blank() || is_one_of(kOwnCellOnly, column)) return c;
  for (std::size_t left = c; left-- > label_column_ + 1;) {
    if (row.at(left).is_blank() || is_note_column(left)) continue;
    if (std::ranges::find(filled_, column) == filled_.end()) filled_.push_back(column);
    return left;
  }
  return c;
}

bool WideHeader::tells_of(std::size_t c) const {
  constexpr std::array kTelling = {
      Column::note, Column::voided, Column::deviation, Column::lasted, Column::failed_by};
  return std::ranges::any_of(kTelling, [this, c](Column column) {
    return names(column) && !row_of(column).at(c).is_blank();
  });
}

std::string WideHeader::run_at(std::size_t c) {
  std::string run;
  for (const auto& [column, label] : labels_) {
    if (is_one_of(kNotOfTheRun, column) || is_one_of(kToldOnce, column)) continue;
    run += label.row->at(holder_of(column, c)).text + '\x1F';
  }
  return run;
}

ExpandedRow WideHeader::row_at(std::size_t c) {
  ExpandedRow row;
  for (const auto& [column, label] : labels_) {
    if (is_one_of(kToldOnce, column)) continue;
    row[column] = expanded(*label.row, holder_of(column, c));
  }
  return row;
}

bool WideHeader::tell_once(std::size_t c, ExpandedRow& row) {
  bool tells = false;
  for (const Column column : kToldOnce) {
    if (!names(column)) continue;
    const bool holds_right = column == Column::test || column == Column::test_level;
    const ExpandedCell cell = expanded(row_of(column), holds_right ? holder_of(column, c) : c);
    if (cell.text.empty() && cell.fault.empty()) continue;
    tells = tells || !holds_right;
    if (column != Column::event) {
      row[column] = cell;
    } else if (row[Column::note].text.empty()) {
      row[Column::note] = cell;  // at which cut it happened is not known
    }
    row.line = cell.line;
    row.column = cell.column;
  }
  return tells;
}

MatchedColumns WideHeader::columns() const {
  MatchedColumns columns = all_columns();
  for (const auto& [column, label] : labels_) {
    columns.headers[index_of(column)] = label.row->at(label_column_).text;
    columns.units[index_of(column)] = label.unit;
  }
  columns.headers[index_of(Column::cuts)] = cuts_label_;
  // Whether there is such a row is what tells "empty" from "not asked".
  if (!names(Column::failed_by)) columns.positions[index_of(Column::failed_by)].reset();
  return columns;
}

std::string WideHeader::filled_rows() const {
  std::string rows;
  for (const Column column : filled_) {
    rows += (rows.empty() ? "" : ", ") + excerpt(row_of(column).at(label_column_).text);
  }
  return rows;
}

}  // namespace keenfall::exchange
