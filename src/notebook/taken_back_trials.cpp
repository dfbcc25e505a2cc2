#include "notebook/taken_back_trials.h"

#include "notebook/changeset.h"
#include "notebook/resting_entries.h"
#include "notebook/rows.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace keenfall::notebook {

namespace {

struct PastTrial {
  std::string uid;
  std::string name;
  std::set<std::string> tables;  // by SHA-256
};

std::size_t place_of(const TableLayout& layout, const std::string& column) {
  const auto found = std::ranges::find(layout.columns, column);
  return static_cast<std::size_t>(found - layout.columns.begin());
}

std::string text_at(const std::vector<std::pair<std::size_t, Cell>>& cells, std::size_t column) {
  for (const auto& [place, cell] : cells) {
    const auto* text = std::get_if<std::string>(&cell);
    if (place == column && text != nullptr) return *text;
  }
  return {};
}

// Follows the journal from its first entry. Numbers of trials are given again, uids never.
class Past {
 public:
  explicit Past(SQLite::Database& database) {
    const TableLayout trial = layout_of(database, "trial");
    uid_ = place_of(trial, "uid");
    name_ = place_of(trial, "name");
    SQLite::Statement entries(database, "SELECT entry FROM journal ORDER BY entry");
    while (entries.executeStep()) {
      (void)any_row_change_of(
          database, entries.getColumn(0).getInt64(), [&](const RowChange& change) {
            follow(change);
            return false;
          });
    }
  }

  [[nodiscard]] const std::vector<PastTrial>& gone() const { return gone_; }

 private:
  void follow(const RowChange& change) {
    if (change.table == "taken_table" && change.kind == RowChangeKind::inserted) {
      const auto* digest = std::get_if<std::string>(&change.key.at(1));
      if (digest != nullptr) tables_[change.key.at(0)].insert(*digest);
    }
    if (change.table != "trial") return;
    const Cell& id = change.key.at(0);
    if (change.kind == RowChangeKind::inserted) {
      tables_.erase(id);
    } else if (change.kind == RowChangeKind::deleted) {
      gone_.push_back({.uid = text_at(change.old_cells, uid_),
                       .name = text_at(change.old_cells, name_),
                       .tables = tables_[id]});
    }
  }

  std::size_t uid_ = 0;
  std::size_t name_ = 0;
  std::map<Cell, std::set<std::string>> tables_;  // ever taken, by the trial's number
  std::vector<PastTrial> gone_;                   // the last one last
};

}  // namespace

std::optional<std::string> uid_of_taken_back(SQLite::Database& database,
                                             const std::string& name,
                                             const std::vector<TakenTable>& tables) {
  const auto judged = texts_in(database,
                               "SELECT DISTINCT trial_uid FROM stored_judgement WHERE trial_uid "
                               "NOT IN (SELECT uid FROM trial)");
  if (judged.empty()) return std::nullopt;
  const Past past(database);
  std::optional<std::string> by_table;
  std::optional<std::string> by_name;
  for (const PastTrial& trial : past.gone()) {
    if (std::ranges::count(judged, trial.uid) == 0) continue;
    if (trial.name == name) by_name = trial.uid;
    const bool took_one = std::ranges::any_of(
        tables, [&](const TakenTable& table) { return trial.tables.contains(table.sha256); });
    if (took_one) by_table = trial.uid;
  }
  return by_name ? by_name : by_table;
}

}  // namespace keenfall::notebook
