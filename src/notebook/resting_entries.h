// Which later entries of the journal stand in the way of undoing one. Private to the folder.
#pragma once

#include "notebook/changeset.h"
#include "notebook/notebook.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

namespace keenfall::notebook {

// Both throw NotebookDamaged where there is no such entry, or it cannot be read.
[[nodiscard]] std::string changeset_of(SQLite::Database& database, std::int64_t entry);
// Is there a row change of the entry for which `holds` is true? Looked at up to the first.
[[nodiscard]] bool any_row_change_of(SQLite::Database& database,
                                     std::int64_t entry,
                                     const std::function<bool(const RowChange&)>& holds);

// The later entries that hold. What was undone later than `entry`, and the undoing, come to nothing
// together.
[[nodiscard]] std::vector<std::int64_t> entries_standing_after(
    const std::vector<JournalEntry>& journal, std::int64_t entry);

// Later entries that hold and stand in the way of the inverse of `entry`. They touch its rows,
// refer to them, took what its deleted rows refer to, took a name anew that those had, or add to or
// take from a list that it adds to or takes from: a list (the runs of a trial, the readings of a
// run) is undone from its end on, so that places in it have no gaps. Looks stand in nobody's way.
// A strike is not undone where a reading for the same checkpoint came in since: both would count.
[[nodiscard]] std::vector<std::int64_t> entries_resting_on(SQLite::Database& database,
                                                           const std::vector<JournalEntry>& journal,
                                                           std::int64_t entry);

}  // namespace keenfall::notebook
