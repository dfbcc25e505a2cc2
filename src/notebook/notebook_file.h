// A notebook's open file, and the one way a change is written to it. Private to the folder.
#pragma once

#include "notebook/notebook.h"
#include "notebook/rows.h"
#include "notebook/writer_lock.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <sqlite3.h>

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace keenfall::notebook {

struct NotebookFile {
  std::string path;
  std::optional<WriterLock> lock;  // present where it is open for writing
  SQLite::Database database;
  std::int64_t version = 0;  // of the schema; the newest where it is open for writing
};

// What is wrong, if anything, with the rows a change wants to write; nothing: they are written.
using Writing = std::function<std::optional<base::Problem>(SQLite::Database&)>;

struct ChangeWords {
  std::string what;
  std::optional<std::int64_t> undoes;
};

// Nothing where nothing would change; else as change().
[[nodiscard]] base::Result<std::optional<JournalEntry>> change_if_any(NotebookFile& file,
                                                                      const ChangeWords& words,
                                                                      const Authorship& by,
                                                                      const Writing& writing);

// Runs `writing` in a transaction, records what it did to the tables and adds the journal's entry.
// Where it finds a problem nothing is written, and where nothing changed that is one. A client id
// that is there already is answered with its entry, and nothing is written.
[[nodiscard]] base::Result<JournalEntry> change(NotebookFile& file,
                                                const ChangeWords& words,
                                                const Authorship& by,
                                                const Writing& writing);

[[nodiscard]] std::vector<JournalEntry> journal_of(SQLite::Database& database);

inline constexpr int kConstraintBroken = 19;  // SQLITE_CONSTRAINT

// Carries SQLite's exceptions over into NotebookFailure.
[[noreturn]] void throw_as_failure(const SQLite::Exception& failure);
// The same for one of SQLite's codes, also an extended one. `otherwise`: what is said of those that
// have no sentence.
[[noreturn]] void throw_as_failure(int code, const std::string& otherwise);

// What `work` returns, which may throw SQLite's exceptions.
template <class Work>
auto carrying_over(Work work) {
  try {
    return work();
  } catch (const SQLite::Exception& failure) {
    throw_as_failure(failure);
  }
}

// The same for what only reads: all of it as of one moment, also while another process writes; of
// the moment that a transaction has, if one is open.
template <class Work>
auto seen_at_once(SQLite::Database& database, Work work) {
  return carrying_over([&] {
    std::optional<SQLite::Transaction> view;
    if (sqlite3_get_autocommit(database.getHandle()) != 0) view.emplace(database);
    return work();
  });
}

}  // namespace keenfall::notebook
