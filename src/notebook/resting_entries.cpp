#include "notebook/resting_entries.h"

#include "base/plain_number.h"
#include "notebook/notebook_failure.h"
#include "notebook/plan_rows.h"
#include "notebook/rows.h"
#include "notebook/schema.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <span>

namespace keenfall::notebook {

namespace {

using KnownCells = std::vector<std::pair<std::size_t, Cell>>;
using Names = std::vector<std::string>;

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
  std::vector<std::string> columns;
  std::map<std::size_t, std::string> refers_to;  // by column, another table
  std::vector<std::vector<std::size_t>> unique;  // columns whose values no two rows share
  std::optional<std::size_t> list_owner;         // column of whose list the rows are

  [[nodiscard]] std::optional<std::size_t> place_of(const std::string& column) const {
    const auto found = std::ranges::find(columns, column);
    if (found == columns.end()) return std::nullopt;
    return static_cast<std::size_t>(found - columns.begin());
  }
};

std::vector<std::vector<std::size_t>> unique_columns(SQLite::Database& database,
                                                     const std::string& table) {
  std::vector<std::vector<std::size_t>> unique;
  SQLite::Statement indexes(database, "PRAGMA index_list(" + table + ")");
  while (indexes.executeStep()) {
    if (indexes.getColumn("origin").getString() != "u") continue;
    unique.emplace_back();
    SQLite::Statement columns(database,
                              "PRAGMA index_info('" + indexes.getColumn("name").getString() + "')");
    while (columns.executeStep()) {
      unique.back().push_back(static_cast<std::size_t>(columns.getColumn("cid").getInt64()));
    }
  }
  return unique;
}

std::map<std::string, TableTies> ties_of(SQLite::Database& database) {
  std::map<std::string, TableTies> ties;
  for (const TableText& table : tables_of_schema()) {
    const std::string name(table.name);
    TableTies& of_table = ties[name];
    of_table.columns = layout_of(database, name).columns;
    SQLite::Statement keys(database, "PRAGMA foreign_key_list(" + name + ")");
    while (keys.executeStep()) {
      const auto column = of_table.place_of(keys.getColumn("from").getString());
      if (column) of_table.refers_to[*column] = keys.getColumn("table").getString();
    }
    of_table.unique = unique_columns(database, name);
    if (of_table.place_of("place")) {
      of_table.list_owner =
          of_table.place_of(name == "run" ? "trial_id" : of_table.columns.front());
    }
  }
  return ties;
}

// The names by which changes of rows get in each other's way.
class RowNames {
 public:
  explicit RowNames(SQLite::Database& database) : database_(database), ties_(ties_of(database)) {}

  // Of the row itself and, where it comes or goes, of the list that it joins or leaves and of what
  // only one row can have.
  Names own(const RowChange& change) {
    Names names{row_name(change.table, change.key)};
    if (is_of_plans(change.table)) names.push_back(row_name(kAskedOfTrial, {change.key.front()}));
    if (change.kind == RowChangeKind::updated) {
      add_changed_names(names, change);
      return names;
    }
    const KnownCells& cells =
        change.kind == RowChangeKind::deleted ? change.old_cells : change.new_cells;
    remember(change, cells);
    const TableTies& ties = ties_[change.table];
    for (const std::vector<std::size_t>& columns : ties.unique) {
      names.push_back(unique_name(change.table, columns, cells, {}));
    }
    if (ties.list_owner) {
      if (const auto owner = cell_at(cells, *ties.list_owner)) {
        names.push_back(row_name("list of " + change.table, {*owner}));
      }
    }
    return names;
  }

  // Of what the row refers to with these cells.
  Names grounds(const RowChange& change, const KnownCells& cells) {
    Names names;
    const TableTies& ties = ties_[change.table];
    for (const auto& [column, table] : ties.refers_to) {
      if (const auto key = cell_at(cells, column)) names.push_back(row_name(table, {*key}));
    }
    const auto cell = [&](const std::string& column) -> std::optional<Cell> {
      const auto place = ties.place_of(column);
      return place ? cell_at(cells, *place) : std::nullopt;
    };
    // What reading a trial asks for, and no foreign key says.
    if (change.table == "plan") {
      add_kit_of_sealed(names, change.key.front(), cell("sealed_at_utc"));
    } else if (change.table == "reading") {
      add(names, "series", trial_of_run(change.key.front()), cell("series"));
    } else if (change.table == "run") {
      add(names, kBladeOfTrial, cell("trial_id"), cell("blade_id"));
    } else if (change.table == "trial_specimen") {
      if (const auto specimen = cell("specimen_id")) {
        add(names, kBladeOfTrial, cell("trial_id"), blade_of_specimen(*specimen));
      }
    }
    return names;
  }

 private:
  static constexpr const char* kBladeOfTrial = "trial_blade by trial_id by blade_id";
  // A claim and a plan are one thing, also where rows of theirs are changed one by one.
  static constexpr const char* kAskedOfTrial = "asked of trial";

  // What only one row can have, of a row with these cells; `otherwise`: where they do not say.
  std::string unique_name(const std::string& table,
                          const std::vector<std::size_t>& columns,
                          const KnownCells& cells,
                          const Row& otherwise) {
    std::string kind = table;
    std::vector<Cell> values;
    for (const std::size_t column : columns) {
      kind += " by " + ties_[table].columns.at(column);
      const Cell here = column < otherwise.size() ? otherwise[column] : Cell();
      values.push_back(cell_at(cells, column).value_or(here));
    }
    return row_name(kind, values);
  }

  // A row that is called otherwise leaves one name and takes another. What the change does not say
  // of the row is as it is there now: whatever changed that later touched the row too.
  void add_changed_names(Names& names, const RowChange& change) {
    const TableTies& ties = ties_[change.table];
    for (const std::vector<std::size_t>& columns : ties.unique) {
      const bool is_changed = std::ranges::any_of(columns, [&](std::size_t column) {
        return cell_at(change.new_cells, column).has_value();
      });
      if (!is_changed) continue;
      Row now;
      each_row(database_,
               change.table,
               "WHERE " + ties.columns.front() + " = ?",
               std::span(change.key).first(1),
               [&](const Row& row) { now = row; });
      names.push_back(unique_name(change.table, columns, change.old_cells, now));
      names.push_back(unique_name(change.table, columns, change.new_cells, now));
    }
  }

  // A sealed plan keeps the names of what it speaks of.
  void add_kit_of_sealed(Names& names,
                         const Cell& trial,
                         const std::optional<Cell>& sealed_at_utc) {
    if (!sealed_at_utc || !std::holds_alternative<std::string>(*sealed_at_utc)) return;
    const auto add_all = [&](const std::string& table, std::size_t column, const char* kind) {
      each_row(database_, table, "WHERE trial_id = ?", std::span(&trial, 1), [&](const Row& row) {
        names.push_back(row_name(kind, {row.at(column)}));
      });
    };
    constexpr std::size_t kBladeOfArm = 2;
    constexpr std::size_t kMediumOfCutting = 2;
    constexpr std::size_t kHouseBladeOfPlan = 12;
    add_all("plan_arm", kBladeOfArm, "blade");
    add_all("plan_cutting", kMediumOfCutting, "medium");
    add_all("plan", kHouseBladeOfPlan, "blade");
  }

  static void add(Names& names,
                  const std::string& kind,
                  const std::optional<Cell>& one,
                  const std::optional<Cell>& other) {
    if (one && other) names.push_back(row_name(kind, {*one, *other}));
  }

  // Runs and specimens that come or go may not be in the tables now.
  void remember(const RowChange& change, const KnownCells& cells) {
    if (change.table != "run" && change.table != "specimen") return;
    const auto owner =
        ties_[change.table].place_of(change.table == "run" ? "trial_id" : "blade_id");
    owners_[row_name(change.table, change.key)] = cell_at(cells, owner.value());
  }

  std::optional<Cell> trial_of_run(const Cell& run) {
    return owner_of("run", run, "SELECT trial_id FROM run WHERE run_id = ?");
  }

  std::optional<Cell> blade_of_specimen(const Cell& specimen) {
    return owner_of("specimen", specimen, "SELECT blade_id FROM specimen WHERE specimen_id = ?");
  }

  std::optional<Cell> owner_of(const std::string& table, const Cell& key, const char* query) {
    const auto* id = std::get_if<std::int64_t>(&key);
    if (id == nullptr) return std::nullopt;
    const auto [owner, is_new] = owners_.try_emplace(row_name(table, {key}));
    if (is_new) {
      SQLite::Statement find(database_, query);
      find.bind(1, *id);
      if (find.executeStep()) owner->second = Cell(find.getColumn(0).getInt64());
    }
    return owner->second;
  }

  SQLite::Database& database_;
  std::map<std::string, TableTies> ties_;
  std::map<std::string, std::optional<Cell>> owners_;
};

// Where a reading stands: its run and cuts, and of a new one all that tells it from others there.
std::string words_of_checkpoint(const Cell& run, double cuts) {
  return row_name("checkpoint " + base::plain_number(cuts), {run});
}

std::string text_of(const Cell& cell) {
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) return std::to_string(*whole);
  const auto* text = std::get_if<std::string>(&cell);
  return text == nullptr ? "" : *text;
}

class Checkpoints {
 public:
  explicit Checkpoints(SQLite::Database& database)
      : database_(database), columns_(layout_of(database, "reading").columns) {}

  // Of a reading that the change strikes out, as it stands there now.
  Names struck_by(const RowChange& change) {
    if (change.table != "reading" || change.kind != RowChangeKind::updated) return {};
    const auto reason = cell_at(change.new_cells, place_of("struck_reason"));
    if (!reason || !std::holds_alternative<std::string>(*reason)) return {};
    Names names;
    each_row(
        database_, "reading", "WHERE run_id = ? AND place = ?", change.key, [&](const Row& row) {
          KnownCells cells;
          for (std::size_t i = 0; i < row.size(); ++i) cells.emplace_back(i, row[i]);
          names = {loosely(change, cells), exactly(change, cells)};
        });
    return names;
  }

  // Of a reading that the change brings in; a row that takes other readings says of some only.
  Names filled_by(const RowChange& change) {
    if (change.table != "reading" || change.kind == RowChangeKind::deleted) return {};
    if (!cell_at(change.new_cells, place_of("cuts"))) return {};
    return {change.kind == RowChangeKind::inserted ? exactly(change, change.new_cells)
                                                   : loosely(change, change.new_cells)};
  }

 private:
  [[nodiscard]] std::size_t place_of(const std::string& column) const {
    return static_cast<std::size_t>(std::ranges::find(columns_, column) - columns_.begin());
  }

  std::string loosely(const RowChange& change, const KnownCells& cells) {
    const auto cuts = cell_at(cells, place_of("cuts"));
    const auto* number = std::get_if<double>(&*cuts);
    return words_of_checkpoint(change.key.front(), number == nullptr ? 0 : *number);
  }

  std::string exactly(const RowChange& change, const KnownCells& cells) {
    std::string words = loosely(change, cells) + " exactly";
    for (const char* column : {"series", "station", "repeat"}) {
      words += '\x1f' + text_of(cell_at(cells, place_of(column)).value_or(Cell()));
    }
    return words;
  }

  SQLite::Database& database_;
  std::vector<std::string> columns_;
};

class Inverse {
 public:
  Inverse(SQLite::Database& database, std::int64_t entry)
      : database_(database), names_(database), checkpoints_(database) {
    (void)any_row_change_of(database, entry, [&](const RowChange& change) {
      if (is_of_looks(change.table)) return false;
      for (std::string& name : names_.own(change)) touched_.insert(std::move(name));
      for (std::string& name : checkpoints_.struck_by(change)) touched_.insert(std::move(name));
      for (std::string& name : names_.grounds(change, change.old_cells)) {
        needed_.insert(std::move(name));
      }
      return false;
    });
  }

  bool is_hindered_by(std::int64_t later) {
    return any_row_change_of(database_, later, [&](const RowChange& change) {
      if (is_of_looks(change.table)) return false;
      const Names own = names_.own(change);
      return are_among(touched_, own) || are_among(touched_, checkpoints_.filled_by(change)) ||
             are_among(touched_, names_.grounds(change, change.new_cells)) ||
             (change.kind == RowChangeKind::deleted && are_among(needed_, own));
    });
  }

 private:
  static bool are_among(const std::set<std::string>& known, const Names& names) {
    return std::ranges::any_of(names,
                               [&](const std::string& name) { return known.contains(name); });
  }

  SQLite::Database& database_;
  RowNames names_;
  Checkpoints checkpoints_;
  std::set<std::string> touched_;
  std::set<std::string> needed_;  // by the rows that it brings back
};

}  // namespace

std::string changeset_of(SQLite::Database& database, std::int64_t entry) {
  SQLite::Statement read(database, "SELECT changeset FROM journal WHERE entry = ?");
  read.bind(1, entry);
  if (!read.executeStep()) throw NotebookDamaged("an entry of the journal is missing");
  const SQLite::Column column = read.getColumn(0);
  return {static_cast<const char*>(column.getBlob()), static_cast<std::size_t>(column.getBytes())};
}

bool any_row_change_of(SQLite::Database& database,
                       std::int64_t entry,
                       const std::function<bool(const RowChange&)>& holds) {
  bool found = false;
  if (!each_row_change_until(changeset_of(database, entry),
                             [&](const RowChange& change) { return found = holds(change); })) {
    throw NotebookDamaged("the journal's record of entry " + std::to_string(entry) + " is damaged");
  }
  return found;
}

std::vector<std::int64_t> entries_standing_after(const std::vector<JournalEntry>& journal,
                                                 std::int64_t entry) {
  std::vector<std::int64_t> standing;
  for (const JournalEntry& later : journal) {
    const bool undoes_a_later_one = later.undoes && *later.undoes > entry;
    if (later.entry <= entry || later.undone_by || undoes_a_later_one) continue;
    standing.push_back(later.entry);
  }
  return standing;
}

std::vector<std::int64_t> entries_resting_on(SQLite::Database& database,
                                             const std::vector<JournalEntry>& journal,
                                             std::int64_t entry) {
  Inverse inverse(database, entry);
  std::vector<std::int64_t> resting = entries_standing_after(journal, entry);
  std::erase_if(resting, [&](std::int64_t later) { return !inverse.is_hindered_by(later); });
  return resting;
}

}  // namespace keenfall::notebook
