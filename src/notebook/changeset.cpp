#include "notebook/changeset.h"

#include "base/require.h"
#include "notebook/notebook_failure.h"
#include "notebook/notebook_file.h"
#include "notebook/schema.h"

#include <sqlite3.h>

namespace keenfall::notebook {

namespace {

void must(int code, const char* what) {
  if (code == SQLITE_OK) return;
  throw_as_failure(code, std::string(what) + ": " + sqlite3_errstr(code));
}

Cell cell_of_value(sqlite3_value* value) {
  switch (sqlite3_value_type(value)) {
    case SQLITE_INTEGER:
      return std::int64_t{sqlite3_value_int64(value)};
    case SQLITE_FLOAT:
      return sqlite3_value_double(value);
    case SQLITE_NULL:
      return {};
    default:
      break;
  }
  const auto size = static_cast<std::size_t>(sqlite3_value_bytes(value));
  const auto* text = static_cast<const char*>(sqlite3_value_blob(value));
  return text == nullptr ? std::string() : std::string(text, size);
}

int stop_on_conflict(void* /*context*/, int /*conflict*/, sqlite3_changeset_iter* /*at*/) {
  return SQLITE_CHANGESET_ABORT;
}

int is_undone(void* /*context*/, const char* table) { return is_of_looks(table) ? 0 : 1; }

// SQLite's functions take it as not const and do not change it.
void* bytes_of(const std::string& changeset) { return const_cast<char*>(changeset.data()); }

std::string taken_over(int size, void* bytes) {
  std::string text(static_cast<const char*>(bytes), static_cast<std::size_t>(size));
  sqlite3_free(bytes);
  return text;
}

RowChange change_at(sqlite3_changeset_iter* at) {
  const char* table = nullptr;
  int columns = 0;
  int operation = 0;
  sqlite3changeset_op(at, &table, &columns, &operation, nullptr);
  unsigned char* is_key = nullptr;
  sqlite3changeset_pk(at, &is_key, nullptr);
  RowChange change{.kind = operation == SQLITE_INSERT   ? RowChangeKind::inserted
                           : operation == SQLITE_DELETE ? RowChangeKind::deleted
                                                        : RowChangeKind::updated,
                   .table = table};
  for (int i = 0; i < columns; ++i) {
    sqlite3_value* before = nullptr;
    sqlite3_value* after = nullptr;
    if (operation != SQLITE_INSERT) sqlite3changeset_old(at, i, &before);
    if (operation != SQLITE_DELETE) sqlite3changeset_new(at, i, &after);
    sqlite3_value* const key = operation == SQLITE_INSERT ? after : before;
    if (is_key[i] != 0 && key != nullptr) change.key.push_back(cell_of_value(key));
    if (after != nullptr) {
      change.new_cells.emplace_back(static_cast<std::size_t>(i), cell_of_value(after));
    }
    if (before != nullptr) {
      change.old_cells.emplace_back(static_cast<std::size_t>(i), cell_of_value(before));
    }
  }
  return change;
}

}  // namespace

Recording::Recording(SQLite::Database& database) {
  must(sqlite3session_create(database.getHandle(), "main", &session_),
       "the change cannot be recorded");
  for (const TableText& table : tables_of_schema()) {
    if (table.name == "journal" || is_beside_the_journal(table.name)) continue;
    must(sqlite3session_attach(session_, std::string(table.name).c_str()),
         "the change cannot be recorded");
  }
}

Recording::~Recording() { sqlite3session_delete(session_); }

std::string Recording::changeset() const {
  int size = 0;
  void* bytes = nullptr;
  must(sqlite3session_changeset(session_, &size, &bytes), "the change cannot be recorded");
  return taken_over(size, bytes);
}

std::string inverse_of(const std::string& changeset) {
  int size = 0;
  void* bytes = nullptr;
  const int code = sqlite3changeset_invert(
      static_cast<int>(changeset.size()), bytes_of(changeset), &size, &bytes);
  if (code == SQLITE_CORRUPT) throw NotebookDamaged("the journal's record of a change is damaged");
  must(code, "a change cannot be turned round");
  return taken_over(size, bytes);
}

bool is_of_looks(const std::string& table) {
  return table == "look" || table == "stored_judgement";
}

bool apply_changeset(SQLite::Database& database, const std::string& changeset) {
  const int code = sqlite3changeset_apply(database.getHandle(),
                                          static_cast<int>(changeset.size()),
                                          bytes_of(changeset),
                                          is_undone,
                                          stop_on_conflict,
                                          nullptr);
  if (code == SQLITE_ABORT || code == SQLITE_CONSTRAINT) return false;
  must(code, "a change cannot be applied");
  return true;
}

bool each_row_change_until(const std::string& changeset,
                           const std::function<bool(const RowChange&)>& is_enough) {
  sqlite3_changeset_iter* at = nullptr;
  if (sqlite3changeset_start(&at, static_cast<int>(changeset.size()), bytes_of(changeset)) !=
      SQLITE_OK) {
    return false;
  }
  bool goes_on = true;
  while (goes_on && sqlite3changeset_next(at) == SQLITE_ROW) goes_on = !is_enough(change_at(at));
  return sqlite3changeset_finalize(at) == SQLITE_OK;
}

bool each_row_change(const std::string& changeset,
                     const std::function<void(const RowChange&)>& use) {
  return each_row_change_until(changeset, [&](const RowChange& change) {
    use(change);
    return false;
  });
}

}  // namespace keenfall::notebook
