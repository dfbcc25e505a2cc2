// The file under one of SQLite's connections, read and locked as SQLite does it: a descriptor of
// our own, when closed, would take every lock of the process on the file with it
// (https://sqlite.org/howtocorrupt.html, section 2.2). Private to the folder.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

namespace keenfall::notebook {

// Opening takes no lock and makes no file.
[[nodiscard]] inline sqlite3_file& file_under(SQLite::Database& database) {
  sqlite3_file* file = nullptr;
  database.check(
      sqlite3_file_control(database.getHandle(), "main", SQLITE_FCNTL_FILE_POINTER, &file));
  return *file;
}

}  // namespace keenfall::notebook
