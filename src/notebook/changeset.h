// What a transaction did to the rows, as SQLite's session extension writes it. Private to the
// folder.
#pragma once

#include "notebook/cell.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <functional>
#include <memory>
#include <string>
#include <vector>

struct sqlite3_session;

namespace keenfall::notebook {

class Recording {
 public:
  // Of every table but the journal, from now on.
  explicit Recording(SQLite::Database& database);
  ~Recording();
  Recording(const Recording&) = delete;
  Recording& operator=(const Recording&) = delete;
  Recording(Recording&&) = delete;
  Recording& operator=(Recording&&) = delete;

  [[nodiscard]] std::string changeset() const;

 private:
  sqlite3_session* session_ = nullptr;
};

[[nodiscard]] std::string inverse_of(const std::string& changeset);

// What was seen stays seen: is the table one of looks, which no undoing touches?
[[nodiscard]] bool is_of_looks(const std::string& table);

// Applies it but for tables of looks; false where a row is not as the changeset expects, a name is
// taken, or something would be left without what it refers to. Then the caller must roll back.
[[nodiscard]] bool apply_changeset(SQLite::Database& database, const std::string& changeset);

enum class RowChangeKind { inserted, updated, deleted };

struct RowChange {
  RowChangeKind kind = RowChangeKind::inserted;
  std::string table;
  std::vector<Cell> key;
  // Column and value of those that are known: as the change leaves them and as they were before.
  std::vector<std::pair<std::size_t, Cell>> new_cells;
  std::vector<std::pair<std::size_t, Cell>> old_cells;
};

// Both fail (false) where the changeset is damaged; the first stops where `is_enough` says so.
[[nodiscard]] bool each_row_change_until(const std::string& changeset,
                                         const std::function<bool(const RowChange&)>& is_enough);
[[nodiscard]] bool each_row_change(const std::string& changeset,
                                   const std::function<void(const RowChange&)>& use);

}  // namespace keenfall::notebook
