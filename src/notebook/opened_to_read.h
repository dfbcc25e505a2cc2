// How a notebook is opened by whoever only reads it: with its log where one lies beside it, without
// writing anything where nothing may be written or the disk is full. Private to the folder.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <string>

namespace keenfall::notebook {

inline constexpr int kWaitMs = 10000;  // for a reader or writer that is busy for a moment

// May the file at `path` be written to, and what SQLite keeps beside it?
[[nodiscard]] bool may_write_beside(const std::string& path);

// Throws SQLite's exceptions: SQLITE_CANTOPEN or SQLITE_READONLY where a log lies beside the file
// that cannot be read without writing. `path`: the real one.
[[nodiscard]] SQLite::Database opened_to_read(const std::string& path);

}  // namespace keenfall::notebook
