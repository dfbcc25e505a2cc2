// Is a notebook as it was written? SQLite's own checks, every row's checksum, the journal's chain,
// and whether the rows are those that the journal leaves behind.
#pragma once

#include "notebook/notebook.h"

#include <string>
#include <vector>

namespace keenfall::notebook {

// What is wrong, in sentences for a person, at most 100; empty: nothing. Changes nothing.
[[nodiscard]] std::vector<std::string> check(const Notebook& notebook);

// The same without the journal: of what is to be taken over from another notebook.
[[nodiscard]] std::vector<std::string> check_content(const Notebook& notebook);

}  // namespace keenfall::notebook
