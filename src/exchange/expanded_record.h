// A row made from the cells of another shape, as a record of a long table.
//
// In: the row and what its columns are called; both must outlive it. Out: a record whose cells keep
// the places they have in the person's own table.
#pragma once

#include "exchange/delimited_text.h"
#include "exchange/expanded_row.h"
#include "exchange/table_row.h"

#include <array>

namespace keenfall::exchange {

class ExpandedRecord {
 public:
  ExpandedRecord(const ExpandedRow& row, const MatchedColumns& columns, DecimalMark mark)
      : format_{.columns = columns, .delimiter = ';', .mark = mark} {
    for (std::size_t i = 0; i < kColumnCount; ++i) {
      const ExpandedCell& cell = row.cells[i];
      cells_[i] = {
          .text = cell.text, .line = cell.line, .column = cell.column, .fault = cell.fault};
      if (!cell.header.empty()) format_.columns.headers[i] = cell.header;
    }
    record_ = {.line = row.line, .cells = cells_, .fault = std::nullopt, .column = row.column};
  }
  ExpandedRecord(const ExpandedRecord&) = delete;
  ExpandedRecord& operator=(const ExpandedRecord&) = delete;
  ExpandedRecord(ExpandedRecord&&) = delete;
  ExpandedRecord& operator=(ExpandedRecord&&) = delete;
  ~ExpandedRecord() = default;

  [[nodiscard]] const Record& record() const { return record_; }
  [[nodiscard]] const RowFormat& format() const { return format_; }

 private:
  RowFormat format_;
  std::array<Cell, kColumnCount> cells_;
  Record record_;
};

}  // namespace keenfall::exchange
