// Rows of a notebook's tables, written with their checksums and read with them verified. Private to
// the folder.
#pragma once

#include "notebook/cell.h"
#include "notebook/row_checksum.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <cstddef>
#include <cstdint>
#include <functional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::notebook {

// A row's cells in the table's order, without the checksum.
using Row = std::vector<Cell>;

struct TableLayout {
  std::string name;
  std::vector<std::string> columns;  // without the checksum
  std::vector<std::size_t> key;      // of the primary key, places in columns
};

[[nodiscard]] TableLayout layout_of(SQLite::Database& database, const std::string& table);

class RowWriter {
 public:
  RowWriter(SQLite::Database& database, const std::string& table);

  void insert(const Row& row);
  // After an insertion that threw.
  void recover() { (void)insert_.tryReset(); }
  // The row with the same key takes these values; false where there is none.
  bool update(const Row& row);
  // The row with the same key goes; false where there is none.
  bool remove(const Row& row);
  // Does the second row have the first one's place in the table?
  [[nodiscard]] bool have_one_key(const Row& one, const Row& other) const;
  // For a table whose key is one whole number: the next free one.
  [[nodiscard]] std::int64_t next_key();

 private:
  void bind(SQLite::Statement& statement, const Row& row);

  SQLite::Database& database_;
  TableLayout layout_;
  RowChecksum checksum_;
  SQLite::Statement insert_;
  std::int64_t next_key_ = 0;
};

struct RowRead {
  Row row;
  bool is_whole = false;  // its checksum fits
};

// The next row of `SELECT * FROM table ...` after executeStep() was true.
[[nodiscard]] RowRead row_read(SQLite::Statement& statement,
                               const std::string& table,
                               RowChecksum& checksum);

// The first column, of texts, of what a query finds.
[[nodiscard]] std::vector<std::string> texts_in(SQLite::Database& database,
                                                const std::string& query);

// Rows in the order asked for ("WHERE run_id = ? ORDER BY place"; may be empty) with one value for
// each question mark. Throws NotebookDamaged where a row's checksum does not fit.
void each_row(SQLite::Database& database,
              const std::string& table,
              const std::string& order,
              std::span<const Cell> values,
              const std::function<void(const Row&)>& use);

}  // namespace keenfall::notebook
