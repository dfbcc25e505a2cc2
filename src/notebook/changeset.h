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

// Applies it; false where a row is not as the changeset expects or something would be left without
// what it refers to. Then the caller must roll back.
[[nodiscard]] bool apply_changeset(SQLite::Database& database, const std::string& changeset);

enum class RowChangeKind { inserted, updated, deleted };

struct RowChange {
  RowChangeKind kind = RowChangeKind::inserted;
  std::string table;
  std::vector<Cell> key;
  // Column and value of those that are known: as they are now or, of a deleted row, as they were.
  std::vector<std::pair<std::size_t, Cell>> new_cells;
  std::vector<std::pair<std::size_t, Cell>> deleted_cells;
};

// Fails (false) where the changeset is damaged.
[[nodiscard]] bool each_row_change(const std::string& changeset,
                                   const std::function<void(const RowChange&)>& use);

}  // namespace keenfall::notebook
