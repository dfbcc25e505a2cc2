// The cells of a row one after another, each as what its column holds. Private to the folder.
#pragma once

#include "notebook/rows.h"

#include <cstdint>
#include <optional>
#include <string>

namespace keenfall::notebook {

// A cell of another type than its column's means a damaged file: std::bad_variant_access never
// leaves, NotebookDamaged does.
class RowReader {
 public:
  explicit RowReader(const Row& row) : row_(row) {}

  std::int64_t whole();
  int small_whole();  // within an int
  double real();
  std::string text();
  bool yes();
  std::optional<int> whole_if_any();
  std::optional<double> real_if_any();
  std::optional<std::string> text_if_any();
  void skip(std::size_t cells = 1) { next_ += cells; }

 private:
  const Cell& next();

  const Row& row_;
  std::size_t next_ = 0;
};

}  // namespace keenfall::notebook
