// The checksum that stands in every row: what SQLite's own check does not see, a changed digit or
// letter, this does. docs/notebook-format.md says how it is made.
#pragma once

#include "notebook/cell.h"
#include "notebook/digest.h"

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace keenfall::notebook {

// Appends a cell as it goes into a digest: a byte for its type, then its value.
void append_cell(std::string& bytes, const Cell& cell);
void append_blob(std::string& bytes, std::string_view blob);

class RowChecksum {
 public:
  // cells: the row without its checksum, in the table's order.
  [[nodiscard]] std::int64_t of(std::string_view table, std::span<const Cell> cells);

 private:
  Sha256 sha_;
  std::string bytes_;
};

}  // namespace keenfall::notebook
