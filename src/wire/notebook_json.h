// A whole notebook as one JSON document, for programs that read no SQLite.
//
// Out: UTF-8, ending in a newline: what it is, every table with its rows as objects, and the
// journal without the changes themselves. Names and units are those of docs/notebook-format.md.
// All of it as of one moment, also while another process writes.
// Reads row by row, so that it needs the document's size and no more.
#pragma once

#include "notebook/notebook.h"

#include <string>

namespace keenfall::wire {

inline constexpr int kNotebookDocumentVersion = 1;

// Throws NotebookDamaged where a row is not as it was written.
[[nodiscard]] std::string notebook_to_json(const notebook::Notebook& notebook,
                                           const std::string& program_version);

}  // namespace keenfall::wire
