#include "notebook/opened_to_read.h"

#include "notebook/log_beside.h"
#include "notebook/open_file.h"

#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdint>
#include <memory>
#include <optional>
#include <string_view>
#include <utility>

namespace keenfall::notebook {

namespace {

// How long a log that just comes or goes is waited for, and between looks.
constexpr std::chrono::milliseconds kPatience{1000};
constexpr int kBetweenLooksMs = 5;

// As SQLite's URI names want it.
std::string percent_encoded(const std::string& path) {
  std::string encoded;
  for (const char c : path) {
    if (c == '%' || c == '?' || c == '#') {
      constexpr std::string_view kDigits = "0123456789ABCDEF";
      const auto byte = static_cast<unsigned char>(c);
      encoded += {'%', kDigits[byte >> 4U], kDigits[byte & 15U]};
    } else {
      encoded += c;
    }
  }
  return encoded;
}

// Reads the first page, by which a log is found and joined.
void look_at_first_page(SQLite::Database& database) {
  (void)database.execAndGet("PRAGMA user_version").getInt64();
}

// Folds the log in when it closes, so that nothing is left beside the file.
SQLite::Database opened_as_who_may_write(const std::string& path) {
  SQLite::Database database(path, SQLite::OPEN_READWRITE);
  database.setBusyTimeout(kWaitMs);
  database.exec("PRAGMA query_only = ON");
  look_at_first_page(database);
  return database;
}

// With the log, of which an index must be there too; it is not written to.
SQLite::Database opened_with_its_log(const std::string& path) {
  SQLite::Database database("file:" + percent_encoded(path) + "?readonly_shm=1",
                            SQLite::OPEN_READONLY | SQLite::OPEN_URI);
  database.setBusyTimeout(kWaitMs);
  look_at_first_page(database);
  return database;
}

// SQLite's shared lock: while it is held nobody folds a log in as the last to close, so that a log
// that comes to lie beside the file stays there.
class SharedLock {
 public:
  SharedLock(SQLite::Database& database, sqlite3_file& file) : file_(file) {
    for (int waited = 0;; waited += kBetweenLooksMs) {
      const int code = file_.pMethods->xLock(&file_, SQLITE_LOCK_SHARED);
      if (code != SQLITE_BUSY || waited >= kWaitMs) {
        database.check(code);
        return;
      }
      sqlite3_sleep(kBetweenLooksMs);
    }
  }
  SharedLock(const SharedLock&) = delete;
  SharedLock& operator=(const SharedLock&) = delete;
  SharedLock(SharedLock&&) = delete;
  SharedLock& operator=(SharedLock&&) = delete;
  ~SharedLock() { file_.pMethods->xUnlock(&file_, SQLITE_LOCK_NONE); }

 private:
  sqlite3_file& file_;
};

struct FreedBySqlite {
  void operator()(unsigned char* bytes) const { sqlite3_free(bytes); }
};

struct Bytes {
  std::unique_ptr<unsigned char, FreedBySqlite> bytes;
  sqlite3_int64 count = 0;
};

Bytes whole_content(SQLite::Database& database, sqlite3_file& file) {
  Bytes all;
  database.check(file.pMethods->xFileSize(&file, &all.count));
  all.bytes.reset(static_cast<unsigned char*>(sqlite3_malloc64(std::uint64_t(all.count))));
  if (!all.bytes) throw SQLite::Exception("out of memory", SQLITE_NOMEM);
  constexpr sqlite3_int64 kAtOnce = sqlite3_int64{1} << 20;
  for (sqlite3_int64 at = 0; at < all.count; at += kAtOnce) {
    const int count = static_cast<int>(std::min(kAtOnce, all.count - at));
    database.check(file.pMethods->xRead(&file, all.bytes.get() + at, count, at));
  }
  return all;
}

bool is_as_it_was(const struct stat& before, const std::string& path) {
  struct stat now {};
  return stat(path.c_str(), &now) == 0 && now.st_dev == before.st_dev &&
         now.st_ino == before.st_ino && now.st_size == before.st_size &&
         now.st_mtim.tv_sec == before.st_mtim.tv_sec &&
         now.st_mtim.tv_nsec == before.st_mtim.tv_nsec;
}

// The file as it is, without a log, in memory; nothing where somebody began to write meanwhile.
std::optional<SQLite::Database> copied_to_memory(const std::string& path) {
  SQLite::Database on_disk(path, SQLite::OPEN_READONLY);
  sqlite3_file& file = file_under(on_disk);
  const SharedLock lock(on_disk, file);
  struct stat before {};
  if (stat(path.c_str(), &before) != 0 || log_beside(path)) return std::nullopt;
  Bytes all = whole_content(on_disk, file);
  if (log_beside(path) || !is_as_it_was(before, path)) return std::nullopt;
  // Bytes 18 and 19 say that it has a log (2), which memory has no place for (SQLite's file
  // format, section 1.3.3).
  constexpr sqlite3_int64 kHeaderBytes = 100;
  if (all.count < kHeaderBytes) throw SQLite::Exception("too short", SQLITE_NOTADB);
  for (const int place : {18, 19}) {
    if (all.bytes.get()[place] == 2) all.bytes.get()[place] = 1;
  }
  SQLite::Database in_memory(":memory:", SQLite::OPEN_READWRITE);
  in_memory.check(
      sqlite3_deserialize(in_memory.getHandle(),
                          "main",
                          all.bytes.release(),
                          all.count,
                          all.count,
                          SQLITE_DESERIALIZE_FREEONCLOSE | SQLITE_DESERIALIZE_READONLY));
  return in_memory;
}

// What SQLite keeps beside the file cannot be made: mostly for want of room.
bool lacks_room_beside(const SQLite::Exception& failure) {
  switch (failure.getExtendedErrorCode()) {
    case SQLITE_IOERR_SHMOPEN:
    case SQLITE_IOERR_SHMSIZE:
    case SQLITE_IOERR_SHMMAP:
      return true;
    default:
      return failure.getErrorCode() == SQLITE_FULL || failure.getErrorCode() == SQLITE_CANTOPEN;
  }
}

// A log that cannot be joined yet or any more, since it just comes or goes.
bool may_pass(const SQLite::Exception& failure) {
  const int code = failure.getErrorCode();
  return code == SQLITE_CANTOPEN || code == SQLITE_READONLY || code == SQLITE_BUSY ||
         code == SQLITE_PROTOCOL;
}

}  // namespace

bool may_write_beside(const std::string& path) {
  const std::size_t slash = path.find_last_of('/');
  const std::string folder = slash == std::string::npos ? "." : path.substr(0, slash + 1);
  return access(path.c_str(), W_OK) == 0 && access(folder.c_str(), W_OK) == 0;
}

SQLite::Database opened_to_read(const std::string& path) {
  if (may_write_beside(path)) {
    try {
      return opened_as_who_may_write(path);
    } catch (const SQLite::Exception& failure) {
      if (!lacks_room_beside(failure)) throw;
    }
  }
  const auto until = std::chrono::steady_clock::now() + kPatience;
  for (;;) {
    const bool is_late = std::chrono::steady_clock::now() >= until;
    try {
      if (log_beside(path)) return opened_with_its_log(path);
      if (auto copy = copied_to_memory(path)) return std::move(*copy);
      if (is_late) throw SQLite::Exception("it never rests", SQLITE_BUSY);
    } catch (const SQLite::Exception& failure) {
      if (is_late || !may_pass(failure)) throw;
    }
    sqlite3_sleep(kBetweenLooksMs);
  }
}

}  // namespace keenfall::notebook
