// The checksum that stands in every row: what SQLite's own check does not see, a changed digit or
// letter, this does. docs/notebook-format.md says how it is made.
#pragma once

#include "notebook/cell.h"
#include "notebook/digest.h"

#include <cstdint>
#include <span>
#include <string_view>

namespace keenfall::notebook {

// Adds a cell to a digest: a byte for its type, then its value.
void add_cell(Sha256& sha, const Cell& cell);

void add_blob(Sha256& sha, std::string_view bytes);

class RowChecksum {
 public:
  // cells: the row without its checksum, in the table's order.
  [[nodiscard]] std::int64_t of(std::string_view table, std::span<const Cell> cells);

 private:
  Sha256 sha_;
};

}  // namespace keenfall::notebook
