#include "notebook/resting_entries.h"

#include "notebook/notebook_failure.h"
#include "notebook/rows.h"
#include "notebook/schema.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

namespace keenfall::notebook {

namespace {

using KnownCells = std::vector<std::pair<std::size_t, Cell>>;

std::string row_name(const std::string& table, const std::vector<Cell>& key) {
  std::string name = table;
  for (const Cell& part : key) {
    name += '\x1f';
    if (const auto* whole = std::get_if<std::int64_t>(&part)) name += std::to_string(*whole);
    if (const auto* text = std::get_if<std::string>(&part)) name += *text;
  }
  return name;
}

std::optional<Cell> cell_at(const KnownCells& cells, std::size_t column) {
  const auto found = std::ranges::find(cells, column, &KnownCells::value_type::first);
  if (found == cells.end()) return std::nullopt;
  return found->second;
}

// What a table's columns say of its rows.
struct TableTies {
  std::map<std::size_t, std::string> refers_to;  // by column, another table
  std::optional<std::size_t> list_owner;         // column of whose list the rows are
  std::optional<std::size_t> series;             // column that is a place in the trial's series
};

std::map<std::string, TableTies> ties_of(SQLite::Database& database) {
  std::map<std::string, TableTies> ties;
  for (const TableText& table : tables_of_schema()) {
    const std::string name(table.name);
    const TableLayout layout = layout_of(database, name);
    const auto column_called = [&](const std::string& column) -> std::optional<std::size_t> {
      const auto found = std::ranges::find(layout.columns, column);
      if (found == layout.columns.end()) return std::nullopt;
      return static_cast<std::size_t>(found - layout.columns.begin());
    };
    TableTies& of_table = ties[name];
    SQLite::Statement keys(database, "PRAGMA foreign_key_list(" + name + ")");
    while (keys.executeStep()) {
      const auto column = column_called(keys.getColumn("from").getString());
      if (column) of_table.refers_to[*column] = keys.getColumn("table").getString();
    }
    if (column_called("place")) {
      of_table.list_owner = column_called(name == "run" ? "trial_id" : layout.columns.front());
    }
    of_table.series = column_called("series");
  }
  return ties;
}

class Touched {
 public:
  Touched(SQLite::Database& database, std::int64_t entry)
      : database_(database), ties_(ties_of(database)) {
    each_row_change_of(database, entry, [&](const RowChange& change) {
      names_.insert(row_name(change.table, change.key));
      if (const auto list = list_of(change)) names_.insert(*list);
    });
  }

  bool is_ground_of(std::int64_t later) {
    bool rests = false;
    each_row_change_of(
        database_, later, [&](const RowChange& change) { rests = rests || is_under(change); });
    return rests;
  }

 private:
  // The list that a row joins or leaves.
  std::optional<std::string> list_of(const RowChange& change) {
    const TableTies& ties = ties_[change.table];
    if (change.kind == RowChangeKind::updated || !ties.list_owner) return std::nullopt;
    const bool is_deleted = change.kind == RowChangeKind::deleted;
    const auto owner =
        cell_at(is_deleted ? change.deleted_cells : change.new_cells, *ties.list_owner);
    if (!owner) return std::nullopt;
    return row_name("list of " + change.table, {*owner});
  }

  bool is_under(const RowChange& change) {
    if (names_.contains(row_name(change.table, change.key))) return true;
    const auto list = list_of(change);
    if (list && names_.contains(*list)) return true;
    const TableTies& ties = ties_[change.table];
    return std::ranges::any_of(change.new_cells, [&](const auto& cell) {
      const auto& [column, now] = cell;
      const auto other = ties.refers_to.find(column);
      if (other != ties.refers_to.end() && names_.contains(row_name(other->second, {now}))) {
        return true;
      }
      return column == ties.series && is_series(change.key.front(), now);
    });
  }

  bool is_series(const Cell& run_id, const Cell& place) {
    const auto* id = std::get_if<std::int64_t>(&run_id);
    if (id == nullptr) return false;
    SQLite::Statement trial(database_, "SELECT trial_id FROM run WHERE run_id = ?");
    trial.bind(1, *id);
    return trial.executeStep() &&
           names_.contains(row_name("series", {trial.getColumn(0).getInt64(), place}));
  }

  SQLite::Database& database_;
  std::map<std::string, TableTies> ties_;
  std::set<std::string> names_;
};

}  // namespace

std::string changeset_of(SQLite::Database& database, std::int64_t entry) {
  SQLite::Statement read(database, "SELECT changeset FROM journal WHERE entry = ?");
  read.bind(1, entry);
  if (!read.executeStep()) throw NotebookDamaged("an entry of the journal is missing");
  const SQLite::Column column = read.getColumn(0);
  return {static_cast<const char*>(column.getBlob()), static_cast<std::size_t>(column.getBytes())};
}

void each_row_change_of(SQLite::Database& database,
                        std::int64_t entry,
                        const std::function<void(const RowChange&)>& use) {
  if (!each_row_change(changeset_of(database, entry), use)) {
    throw NotebookDamaged("the journal's record of entry " + std::to_string(entry) + " is damaged");
  }
}

std::vector<std::int64_t> entries_resting_on(SQLite::Database& database,
                                             const std::vector<JournalEntry>& journal,
                                             std::int64_t entry) {
  Touched touched(database, entry);
  std::vector<std::int64_t> resting;
  for (const JournalEntry& later : journal) {
    const bool undoes_a_later_one = later.undoes && *later.undoes > entry;
    if (later.entry <= entry || later.undone_by || undoes_a_later_one) continue;
    if (touched.is_ground_of(later.entry)) resting.push_back(later.entry);
  }
  return resting;
}

}  // namespace keenfall::notebook
