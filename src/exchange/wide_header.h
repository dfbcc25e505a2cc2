// The block of named rows above (or below) the readings of a wide table: blade, medium, run and so
// on, each cell holding for the column beneath, or for those to its right until the next is
// written.
#pragma once

#include "exchange/expanded_row.h"
#include "exchange/header_meaning.h"

#include <cstddef>
#include <map>
#include <set>
#include <span>
#include <string>
#include <vector>

namespace keenfall::exchange {

class WideHeader {
 public:
  // label_column: the one with the rows' names, from 0.
  explicit WideHeader(std::size_t label_column) : label_column_(label_column) {}

  // False: a row of that name stands there already, and it cannot be told which one holds.
  [[nodiscard]] bool add(const GridRow& row, const HeaderMeaning& meaning);
  void add_note_column(std::size_t c) { note_columns_.insert(c); }

  [[nodiscard]] bool names(Column column) const { return labels_.contains(column); }
  [[nodiscard]] const GridRow& row_of(Column column) const { return *labels_.at(column).row; }
  [[nodiscard]] bool is_note_column(std::size_t c) const { return note_columns_.contains(c); }
  [[nodiscard]] const std::set<std::size_t>& note_columns() const { return note_columns_; }
  [[nodiscard]] std::size_t width() const { return width_; }
  [[nodiscard]] const std::string& reading_unit() const { return reading_unit_; }

  // Where the cell that holds for column c stands; c itself when there is none.
  [[nodiscard]] std::size_t holder_of(Column column, std::size_t c);
  // Whether something that makes a column worth taking is told of it: a note, a life, that it is
  // void.
  [[nodiscard]] bool tells_of(std::size_t c) const;
  // What tells one run from another.
  [[nodiscard]] std::string run_at(std::size_t c);
  // All that holds for every reading of the column.
  [[nodiscard]] ExpandedRow row_at(std::size_t c);
  // What is told once for the column: fills it into `row`; false when there is nothing.
  [[nodiscard]] bool tell_once(std::size_t c, ExpandedRow& row);

  [[nodiscard]] MatchedColumns columns() const;
  // The names of rows in which empty cells held what stands to their left, for a remark.
  [[nodiscard]] std::string filled_rows() const;

 private:
  struct Label {
    const GridRow* row = nullptr;
    HeaderUnit unit;
  };

  std::size_t label_column_;
  std::map<Column, Label> labels_;
  std::set<std::size_t> note_columns_;
  std::vector<Column> filled_;
  std::size_t width_ = 0;
  std::string reading_unit_;
  std::string cuts_label_;  // as written; empty: no row is named so
};

// Columns without which a wide table says nothing.
[[nodiscard]] std::span<const Column> needed_in_wide_tables();

// A cell with the place where it stands.
[[nodiscard]] ExpandedCell expanded(const GridRow& row, std::size_t c);

}  // namespace keenfall::exchange
