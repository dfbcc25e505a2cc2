// Entries of the journal by which tables were taken in.
#pragma once

#include "notebook/notebook.h"

#include <cstdint>
#include <optional>
#include <string>

namespace keenfall::notebook {

// Does the entry say that a table was taken in? One that undoes or does again does not.
[[nodiscard]] bool took_a_table(const JournalEntry& entry);

struct TakenInto {
  std::string uid;  // of the trial
  std::string name;
  bool is_new = false;  // the entry brought the trial itself, which goes with it
};

// Into which trial; nothing where the entry took no table in, or does not hold any more. Throws
// NotebookDamaged where it cannot be read.
[[nodiscard]] std::optional<TakenInto> taken_into(const Notebook& notebook, std::int64_t entry);

}  // namespace keenfall::notebook
