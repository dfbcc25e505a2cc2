// Rows of a list come in the order of their places, which are 0, 1, 2 ... without a gap: what names
// one by its place would name another else. Private to the folder.
#pragma once

#include "notebook/notebook_failure.h"

#include <cstdint>
#include <optional>
#include <string>
#include <utility>

namespace keenfall::notebook {

class Places {
 public:
  explicit Places(std::string table) : table_(std::move(table)) {}

  void next(std::int64_t owner, std::int64_t place) {
    if (owner != owner_) next_ = 0;
    owner_ = owner;
    if (place != next_++) {
      throw NotebookDamaged("the places in a list of " + table_ + " have a gap");
    }
  }

 private:
  std::string table_;
  std::optional<std::int64_t> owner_;
  std::int64_t next_ = 0;
};

}  // namespace keenfall::notebook
