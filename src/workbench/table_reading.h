// Tables in hand, dropped on a page or typed there: how they would be taken, and taking them.
//
// Reading changes nothing: it says what a table was taken for, every problem beside its cell, what
// would come in and how that stands to a trial that is there. Taking is one change, as of a file:
// into a trial that is there, by its uid, or into a new one. Fails with Problems where the notebook
// cannot be opened, has no such trial, the tables are refused, or it was stopped (a problem of the
// kind `interrupted`); then nothing has changed. Throws NotebookTrouble where the machine fails.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "wire/tables_json.h"
#include "workbench/notebook_opening.h"

#include <string>

namespace keenfall::workbench {

// Do the tables hold so much that a person would wait? Taking in 128 KiB, about 6,500 readings,
// takes some 150 ms on a busy machine.
[[nodiscard]] bool is_long_to_read(const wire::ReadTables& asked);

// notebook: its path; empty: none is open, and nothing is said of trials that are there.
[[nodiscard]] base::ResultOrProblems<wire::TablesRead> read_tables(
    const std::string& notebook,
    const wire::ReadTables& asked,
    const base::ProgressReport& progress = base::unwatched());

// A new trial by the name of one that is there is refused, unless all of it is there already.
[[nodiscard]] base::ResultOrProblems<wire::TablesTaken> take_tables_in_hand(
    const std::string& notebook,
    const wire::TakeTables& asked,
    const Hand& hand,
    const base::ProgressReport& progress = base::unwatched());

}  // namespace keenfall::workbench
