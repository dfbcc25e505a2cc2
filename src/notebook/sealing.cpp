#include "notebook/sealing.h"

#include "notebook/resting_entries.h"
#include "notebook/rows.h"

#include <algorithm>

namespace keenfall::notebook {

namespace {

std::optional<std::string> name_of_read_trial(SQLite::Database& database, const Cell& trial_id) {
  const auto* id = std::get_if<std::int64_t>(&trial_id);
  if (id == nullptr) return std::nullopt;
  SQLite::Statement find(
      database,
      "SELECT name FROM trial WHERE trial_id = ?1 AND EXISTS (SELECT 1 FROM run WHERE trial_id = "
      "?1 AND (run_id IN (SELECT run_id FROM reading) OR run_id IN (SELECT run_id FROM "
      "edge_life)))");
  find.bind(1, *id);
  if (!find.executeStep()) return std::nullopt;
  return find.getColumn(0).getString();
}

}  // namespace

std::optional<std::string> trial_whose_sealing_holds(SQLite::Database& database,
                                                     std::int64_t entry) {
  const auto columns = layout_of(database, "plan").columns;
  const auto sealed_at =
      static_cast<std::size_t>(std::ranges::find(columns, "sealed_at_utc") - columns.begin());
  std::optional<std::string> trial;
  (void)any_row_change_of(database, entry, [&](const RowChange& change) {
    const bool seals = change.table == "plan" && change.kind == RowChangeKind::updated &&
                       std::ranges::any_of(change.new_cells, [&](const auto& cell) {
                         return cell.first == sealed_at;
                       });
    if (seals) trial = name_of_read_trial(database, change.key.front());
    return trial.has_value();
  });
  return trial;
}

}  // namespace keenfall::notebook
