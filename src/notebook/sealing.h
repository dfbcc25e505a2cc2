// What is sealed before a reading stays so. Private to the folder.
#pragma once

#include "base/result.h"
#include "notebook/notebook.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::notebook {

// Undoing the entry would seal a trial's plan, or unseal it, although readings or edge lives of the
// trial came in after it, or something was tapped for a run of it at the bench: the trial's name.
// Nothing where it would not. What was read before the entry stands in nobody's way: the plan says
// how many runs were read when it was sealed.
[[nodiscard]] std::optional<std::string> trial_whose_sealing_holds(
    SQLite::Database& database, const std::vector<JournalEntry>& journal, std::int64_t entry);

// The entry that sealed the trial's plan at that time; nothing where the journal has none that
// holds.
[[nodiscard]] std::optional<std::int64_t> entry_that_sealed(
    SQLite::Database& database,
    const std::vector<JournalEntry>& journal,
    std::int64_t trial_id,
    const std::string& sealed_at_utc);

}  // namespace keenfall::notebook
