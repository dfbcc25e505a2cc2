// An entry of the bench as the cells of its row, and back. Private to the folder.
#pragma once

#include "bench/entry.h"
#include "notebook/row_reader.h"
#include "notebook/rows.h"

namespace keenfall::notebook {

// From client_id to piece_changed.
[[nodiscard]] Row cells_of(const bench::Entry& entry);

// Throws NotebookDamaged for a word that cells_of() does not write.
[[nodiscard]] bench::Entry entry_in(RowReader& row);

}  // namespace keenfall::notebook
