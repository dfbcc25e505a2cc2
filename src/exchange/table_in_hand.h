// A table that is in memory: a file that was dropped on a page, or what was typed there.
//
// In: bytes as they would lie on the disk, or typed cells, a row of texts each. Typed cells become
// the text of a table with semicolons, so that there is one way to read a table, and so that the
// text can be kept and taken again. A line of that text is a typed row; a line end within a cell
// becomes a space.
#pragma once

#include <string>
#include <vector>

namespace keenfall::exchange {

struct TableInHand {
  std::string name;       // of the file, or as the person calls it; stands in problems
  std::string bytes;      // a text or a spreadsheet
  char delimiter = '\0';  // between what the cells of a text stand; '\0': to be found out

  bool operator==(const TableInHand&) const = default;
};

using TypedRows = std::vector<std::vector<std::string>>;

// The first row holds the headers. Rows that stop short of it are filled up.
[[nodiscard]] TableInHand typed_table(std::string name, const TypedRows& rows);

// What a trial is called after it: a file's name without its folders and ending, a typed table's
// name as it is.
[[nodiscard]] std::string trial_name_after(const TableInHand& table);

}  // namespace keenfall::exchange
