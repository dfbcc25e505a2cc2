#include "notebook/taken_entries.h"

#include "notebook/changeset.h"
#include "notebook/notebook_file.h"
#include "notebook/resting_entries.h"

#include <algorithm>
#include <variant>
#include <vector>

namespace keenfall::notebook {

bool took_a_table(const JournalEntry& entry) {
  return !entry.undoes && entry.what.starts_with("take ");
}

std::optional<TakenInto> taken_into(const Notebook& notebook, std::int64_t entry) {
  SQLite::Database& database = notebook.file().database;
  return seen_at_once(database, [&]() -> std::optional<TakenInto> {
    const std::vector<JournalEntry> journal = journal_of(database);
    const auto found = std::ranges::find(journal, entry, &JournalEntry::entry);
    if (found == journal.end() || !took_a_table(*found) || found->undone_by) return std::nullopt;
    std::optional<Cell> trial;
    TakenInto into;
    (void)any_row_change_of(database, entry, [&](const RowChange& change) {
      if (change.kind != RowChangeKind::inserted) return false;
      if (change.table == "taken_table") trial = change.key.front();
      into.is_new = into.is_new || change.table == "trial";
      return false;
    });
    const auto* id = trial ? std::get_if<std::int64_t>(&*trial) : nullptr;
    if (id == nullptr) return std::nullopt;
    SQLite::Statement row(database, "SELECT uid, name FROM trial WHERE trial_id = ?");
    row.bind(1, *id);
    if (!row.executeStep()) return std::nullopt;
    into.uid = row.getColumn(0).getString();
    into.name = row.getColumn(1).getString();
    return into;
  });
}

}  // namespace keenfall::notebook
