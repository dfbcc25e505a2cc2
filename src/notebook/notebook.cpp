#include "notebook/notebook.h"

#include "notebook/file_header.h"
#include "notebook/log_beside.h"
#include "notebook/new_file.h"
#include "notebook/notebook_failure.h"
#include "notebook/notebook_file.h"
#include "notebook/opened_to_read.h"
#include "notebook/row_reader.h"
#include "notebook/schema.h"

#include <SQLiteCpp/Backup.h>
#include <sqlite3.h>
#include <unistd.h>

#include <cstdint>
#include <span>
#include <utility>

namespace keenfall::notebook {

namespace {

base::Problem about_file(const std::string& path, const std::string& sentence) {
  return {.kind = base::ProblemKind::unreadable, .sentence = sentence, .place = {.file = path}};
}

void set_up(SQLite::Database& database, std::chrono::milliseconds waits) {
  database.setBusyTimeout(static_cast<int>(waits.count()));
  database.exec("PRAGMA foreign_keys = ON");
  database.exec("PRAGMA synchronous = FULL");
  database.exec("PRAGMA trusted_schema = OFF");
  database.exec("PRAGMA cell_size_check = ON");
}

// In place of FULL while a file is made without a log: that the journal is gone, and that the file
// has its name, is on the disk too before it is acknowledged.
void sync_folder_too(SQLite::Database& database) { database.exec("PRAGMA synchronous = EXTRA"); }

std::int64_t version_of(SQLite::Database& database) {
  return database.execAndGet("PRAGMA user_version").getInt64();
}

void create_tables(SQLite::Database& database, std::span<const TableText> tables) {
  for (const TableText& table : tables) database.exec(std::string(table.sql));
  database.exec("PRAGMA user_version = " + std::to_string(kSchemaVersion));
}

// One transaction: a file is of one version or of the next.
void bring_up_to_date(SQLite::Database& database) {
  const std::int64_t version = version_of(database);
  if (version == kSchemaVersion) return;
  SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
  create_tables(database, tables_of_schema().subspan(tables_of_schema(version).size()));
  transaction.commit();
}

bool has_exactly_the_schema(SQLite::Database& database) {
  const std::int64_t version = version_of(database);
  if (version < 1 || version > kSchemaVersion) return false;
  // What ANALYZE notes down (sqlite_stat1 and the like) changes nothing that is kept.
  SQLite::Statement found(database,
                          "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND "
                          "substr(name, 1, 11) <> 'sqlite_stat' ORDER BY rowid");
  for (const TableText& table : tables_of_schema(version)) {
    if (!found.executeStep() || found.getColumn(0).getString() != table.sql) return false;
  }
  return !found.executeStep();
}

// Set where a notebook is made; set again where that was interrupted just before.
void keep_a_log(SQLite::Database& database) {
  if (database.execAndGet("PRAGMA journal_mode = WAL").getString() != "wal") {
    throw NotebookFailure("its disk does not allow the log that a notebook is written with");
  }
  database.exec("PRAGMA synchronous = FULL");
}

std::unique_ptr<NotebookFile> opened_file(const std::string& path,
                                          std::optional<WriterLock> lock,
                                          SQLite::Database database) {
  const std::int64_t version = version_of(database);
  return std::make_unique<NotebookFile>(
      NotebookFile{path, std::move(lock), std::move(database), version});
}

// SQLite does not fold the log of a moved file in when it closes it, and by its new name nobody
// would find the log: what was acknowledged would be lost.
void fold_in_where_it_is_now(NotebookFile& file) noexcept {
  const std::string& path = file.lock->notebook_path();
  sqlite3* handle = file.database.getHandle();
  const bool is_folded_in =
      sqlite3_wal_checkpoint_v2(handle, "main", SQLITE_CHECKPOINT_TRUNCATE, nullptr, nullptr) ==
      SQLITE_OK;
  if (!is_folded_in || access(path.c_str(), F_OK) == 0) return;
  for (const char* ending : {"-wal", "-shm"}) unlink((path + ending).c_str());
}

// The extended one, which SQLiteCpp does not have of everything.
int code_of(const SQLite::Exception& failure) {
  const int code = failure.getExtendedErrorCode();
  return code > 0 ? code : failure.getErrorCode();
}

// SQLite answers SQLITE_BUSY, and no exception is thrown, where a page could not be copied.
void copy_all_pages(SQLite::Database& copy, SQLite::Database& original) {
  constexpr int kAll = -1;
  const int code = SQLite::Backup(copy, original).executeStep(kAll);
  if (code != SQLITE_DONE) throw SQLite::Exception("not all pages were copied", code);
}

// Nothing where it was not the copy that could not be written.
std::optional<std::string> words_of_failed_copy(const SQLite::Exception& failure) {
  switch (code_of(failure)) {
    case SQLITE_IOERR_SHMSIZE:
    case SQLITE_FULL:
      return "There is no room left on the disk for the copy; none was made.";
    case SQLITE_IOERR_WRITE:
    case SQLITE_IOERR_FSYNC:
    case SQLITE_IOERR_DIR_FSYNC:
    case SQLITE_IOERR_TRUNCATE:
    case SQLITE_IOERR_SHMOPEN:
    case SQLITE_IOERR_SHMMAP:
      return "The disk failed when the copy was written to it; none was made.";
    default:
      return std::nullopt;
  }
}

}  // namespace

void throw_as_failure(const SQLite::Exception& failure) {
  throw_as_failure(code_of(failure), failure.what());
}

void throw_as_failure(int code, const std::string& otherwise) {
  const bool has_no_room_beside = code == SQLITE_IOERR_SHMSIZE;
  if (code == SQLITE_IOERR_FSYNC) {  // it may all be written, and come to the disk yet
    throw NotebookFailure(
        "the disk failed when it was asked to make the change lasting; keenfall log says whether "
        "it was kept");
  }
  switch (has_no_room_beside ? SQLITE_FULL : code & 0xFF) {  // of which the rest is a kind
    case SQLITE_FULL:
      throw NotebookFailure("there is no room left on the disk; nothing of this change was kept");
    case SQLITE_CORRUPT:
    case SQLITE_NOTADB:
      throw NotebookDamaged("the file is damaged");
    case SQLITE_BUSY:
      throw NotebookFailure(
          "another program kept it busy for too long; nothing was changed, try again");
    case SQLITE_READONLY:
      throw NotebookFailure("it may not be written to");
    case SQLITE_CANTOPEN:
      throw NotebookFailure(
          "it could not be opened, or what lies beside it (-wal, -shm, -journal); nothing of this "
          "change was kept");
    case SQLITE_IOERR:
      throw NotebookFailure(
          "the disk failed while it was read or written; nothing of this change was kept");
    default:
      throw NotebookFailure(otherwise);
  }
}

Notebook::Notebook(std::unique_ptr<NotebookFile> file) : file_(std::move(file)) {}
Notebook::Notebook(Notebook&& other) noexcept = default;

Notebook::~Notebook() {
  if (file_ && file_->lock && !file_->lock->is_at_its_path()) fold_in_where_it_is_now(*file_);
}

struct OneMoment::View {
  std::optional<SQLite::Transaction> transaction;
};

OneMoment::OneMoment(const Notebook& notebook) : view_(std::make_unique<View>()) {
  SQLite::Database& database = notebook.file().database;
  if (sqlite3_get_autocommit(database.getHandle()) == 0) return;  // it has one already
  carrying_over([&] { view_->transaction.emplace(database); });
}

OneMoment::~OneMoment() = default;

base::Result<Notebook> Notebook::create(const std::string& path,
                                        const Birth& birth,
                                        const Opener& opener) {
  if (auto problem = problem_of_new_name(path, "notebook")) return base::failed(*problem);
  auto lock = WriterLock::take(path, opener.words + ", since " + opener.at_utc);
  if (!lock) return base::failed(lock.error());
  auto made = NewFile::make(path, "notebook");
  if (!made) return base::failed(made.error());
  if (auto problem = lock->hold_file()) return base::failed(*problem);
  return carrying_over([&]() -> base::Result<Notebook> {
    SQLite::Database database(real_path(path), SQLite::OPEN_READWRITE);
    database.exec("PRAGMA page_size = 4096");
    set_up(database, opener.waits);
    sync_folder_too(database);
    {
      SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
      database.exec("PRAGMA application_id = " + std::to_string(kApplicationId));
      create_tables(database, tables_of_schema());
      RowWriter(database, "notebook")
          .insert({std::int64_t{1}, birth.uid, opener.at_utc, birth.made_by});
      transaction.commit();
    }
    keep_a_log(database);
    Notebook notebook(opened_file(path, std::move(*lock), std::move(database)));
    made->keep();
    return notebook;
  });
}

Notebook Notebook::temporary() {
  return carrying_over([] {
    SQLite::Database database("", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    database.exec("PRAGMA foreign_keys = ON");
    create_tables(database, tables_of_schema());
    return Notebook(opened_file("", std::nullopt, std::move(database)));
  });
}

Notebook Notebook::temporary_copy() const {
  return carrying_over([&] {
    SQLite::Database database("", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    copy_all_pages(database, file_->database);
    database.exec("PRAGMA foreign_keys = ON");
    bring_up_to_date(database);
    return Notebook(opened_file("", std::nullopt, std::move(database)));
  });
}

base::Result<Notebook> Notebook::open_to_read(const std::string& path) {
  if (auto problem = problem_of_file(path)) return base::failed(std::move(*problem));
  try {
    SQLite::Database database = opened_to_read(real_path(path));
    set_up(database, std::chrono::milliseconds(kWaitMs));
    if (!has_exactly_the_schema(database)) {
      return base::failed(about_file(path, "The tables of this file are not those of a notebook."));
    }
    return Notebook(opened_file(path, std::nullopt, std::move(database)));
  } catch (const SQLite::Exception& failure) {
    const bool could_not_join =
        failure.getErrorCode() == SQLITE_CANTOPEN || failure.getErrorCode() == SQLITE_READONLY;
    if (could_not_join && log_beside(real_path(path)) && !may_write_beside(real_path(path))) {
      return base::failed(about_file(path,
                                     "The last changes lie in a log beside the notebook, which can "
                                     "be read only where the folder may be written to."));
    }
    throw_as_failure(failure);
  }
}

base::Result<Notebook> Notebook::open_to_write(const std::string& path, const Opener& opener) {
  if (auto problem = problem_of_file(path)) return base::failed(std::move(*problem));
  if (access(path.c_str(), W_OK) != 0) {
    return base::failed(about_file(path, "The notebook may not be written to."));
  }
  auto lock = WriterLock::take(path, opener.words + ", since " + opener.at_utc);
  if (!lock) return base::failed(lock.error());
  if (auto problem = lock->hold_file()) return base::failed(*problem);
  return carrying_over([&]() -> base::Result<Notebook> {
    SQLite::Database database(real_path(path), SQLite::OPEN_READWRITE);
    set_up(database, opener.waits);
    if (!has_exactly_the_schema(database)) {
      return base::failed(about_file(path, "The tables of this file are not those of a notebook."));
    }
    keep_a_log(database);
    bring_up_to_date(database);
    return Notebook(opened_file(path, std::move(*lock), std::move(database)));
  });
}

const std::string& Notebook::path() const { return file_->path; }

NotebookIdentity Notebook::identity() const {
  return carrying_over([&] {
    NotebookIdentity identity{.schema_version = file_->version};
    each_row(file_->database, "notebook", "", {}, [&](const Row& cells) {
      RowReader row(cells);
      row.skip();
      identity.uid = row.text();
      identity.made_at_utc = row.text();
      identity.made_by = row.text();
    });
    return identity;
  });
}

std::vector<JournalEntry> Notebook::journal() const {
  return carrying_over([&] { return journal_of(file_->database); });
}

base::Result<std::string> Notebook::back_up_to(const std::string& copy_path) const {
  auto made = NewFile::make(copy_path, "copy");
  if (!made) return base::failed(made.error());
  return carrying_over([&]() -> base::Result<std::string> {
    try {
      SQLite::Database copy(real_path(copy_path), SQLite::OPEN_READWRITE);
      sync_folder_too(copy);
      copy_all_pages(copy, file_->database);
      keep_a_log(copy);
      copy.exec("PRAGMA wal_checkpoint(TRUNCATE)");
    } catch (const SQLite::Exception& failure) {
      const auto words = words_of_failed_copy(failure);
      if (!words) throw;
      return base::failed(about_file(copy_path, *words));
    }
    made->keep();
    return copy_path;
  });
}

}  // namespace keenfall::notebook
