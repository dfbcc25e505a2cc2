// Trials that were taken back after they were judged. Private to the folder.
//
// What was seen stays seen: whoever takes such a trial in again goes on with the same looks, so it
// gets the identity it had. It is known by its name, or by a table that it took, as the journal
// tells them.
#pragma once

#include "notebook/kept_trials.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <optional>
#include <string>
#include <vector>

namespace keenfall::notebook {

// The uid of the trial that was judged, is in the notebook no more and was called `name`, or else
// took one of these tables; of the last one where there are several. Nothing where there is none.
// Throws NotebookDamaged where the journal cannot be read.
[[nodiscard]] std::optional<std::string> uid_of_taken_back(SQLite::Database& database,
                                                           const std::string& name,
                                                           const std::vector<TakenTable>& tables);

}  // namespace keenfall::notebook
