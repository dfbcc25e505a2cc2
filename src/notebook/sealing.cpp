#include "notebook/sealing.h"

#include "notebook/resting_entries.h"
#include "notebook/rows.h"

#include <algorithm>
#include <set>
#include <span>
#include <variant>

namespace keenfall::notebook {

namespace {

std::optional<Cell> trial_sealed_or_unsealed_by(SQLite::Database& database, std::int64_t entry) {
  const auto columns = layout_of(database, "plan").columns;
  const auto sealed_at =
      static_cast<std::size_t>(std::ranges::find(columns, "sealed_at_utc") - columns.begin());
  std::optional<Cell> trial_id;
  (void)any_row_change_of(database, entry, [&](const RowChange& change) {
    const bool seals = change.table == "plan" && change.kind == RowChangeKind::updated &&
                       std::ranges::any_of(change.new_cells, [&](const auto& cell) {
                         return cell.first == sealed_at;
                       });
    if (seals) trial_id = change.key.front();
    return seals;
  });
  return trial_id;
}

// A run that takes readings in its midst has a new last one too.
bool brings_in_readings(SQLite::Database& database,
                        std::int64_t entry,
                        const std::set<Cell>& of_runs) {
  return any_row_change_of(database, entry, [&](const RowChange& change) {
    return change.kind == RowChangeKind::inserted &&
           (change.table == "reading" || change.table == "edge_life") &&
           of_runs.contains(change.key.front());
  });
}

}  // namespace

std::optional<std::string> trial_whose_sealing_holds(SQLite::Database& database,
                                                     const std::vector<JournalEntry>& journal,
                                                     std::int64_t entry) {
  const std::optional<Cell> trial_id = trial_sealed_or_unsealed_by(database, entry);
  if (!trial_id) return std::nullopt;
  std::set<Cell> runs;
  each_row(database, "run", "WHERE trial_id = ?", std::span(&*trial_id, 1), [&](const Row& row) {
    runs.insert(row.front());
  });
  const bool was_read_since = std::ranges::any_of(
      entries_standing_after(journal, entry),
      [&](std::int64_t later) { return brings_in_readings(database, later, runs); });
  SQLite::Statement find(database,
                         "SELECT name, uid IN (SELECT trial_uid FROM bench_run JOIN bench_entry "
                         "USING (bench_run_id)) FROM trial WHERE trial_id = ?");
  find.bind(1, std::get<std::int64_t>(*trial_id));
  if (!find.executeStep()) return std::nullopt;
  const bool was_begun_at_the_bench = find.getColumn(1).getInt() != 0;
  if (!was_read_since && !was_begun_at_the_bench) return std::nullopt;
  return find.getColumn(0).getString();
}

std::optional<std::int64_t> entry_that_sealed(SQLite::Database& database,
                                              const std::vector<JournalEntry>& journal,
                                              std::int64_t trial_id,
                                              const std::string& sealed_at_utc) {
  for (auto entry = journal.rbegin(); entry != journal.rend(); ++entry) {
    if (entry->undone_by || entry->undoes || entry->at_utc != sealed_at_utc) continue;
    if (trial_sealed_or_unsealed_by(database, entry->entry) == Cell(trial_id)) return entry->entry;
  }
  return std::nullopt;
}

}  // namespace keenfall::notebook
