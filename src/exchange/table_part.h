// What of a table can be left out by itself: a row, a column of a wide table, or a single cell.
//
// Never half a row: a cell is left out only where it holds one reading of a table that has several
// in a row.
#pragma once

#include <compare>
#include <cstddef>
#include <set>

namespace keenfall::exchange {

struct TablePart {
  std::size_t file = 0;    // of the files and sheets taken, from 0
  std::size_t line = 0;    // from 1; 0: the whole column
  std::size_t column = 0;  // from 1; 0: the whole row

  auto operator<=>(const TablePart&) const = default;
};

class TableParts {
 public:
  // False: it was among them.
  bool add(TablePart part) { return parts_.insert(part).second; }

  [[nodiscard]] bool has(TablePart part) const { return !parts_.empty() && parts_.contains(part); }
  // Whether the cell is left out, by itself or with its row or column.
  [[nodiscard]] bool covers(TablePart cell) const {
    return !parts_.empty() &&
           (has(cell) || has({cell.file, cell.line, 0}) || has({cell.file, 0, cell.column}));
  }
  [[nodiscard]] bool has_any_of(std::size_t file) const {
    const auto found = parts_.lower_bound({file, 0, 0});
    return found != parts_.end() && found->file == file;
  }
  [[nodiscard]] const std::set<TablePart>& all() const { return parts_; }

 private:
  std::set<TablePart> parts_;
};

}  // namespace keenfall::exchange
