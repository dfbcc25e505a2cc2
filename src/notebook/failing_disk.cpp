#include "notebook/failing_disk.h"

#include <sqlite3.h>

#include <filesystem>
#include <fstream>
#include <iterator>

namespace keenfall::notebook::testing {

enum class Operation { open, read, write, resize, sync, remove, map };

struct FailingDisk::Vfs {
  sqlite3_vfs as_sqlite{};
  sqlite3_vfs* real = nullptr;
  DiskRecord record;
  Trouble trouble = Trouble::none;
  int at = 0;
  int count = 0;
  bool has_failed = false;

  [[nodiscard]] bool counts(Operation operation) const {
    switch (trouble) {
      case Trouble::power_cut:
        return operation != Operation::open && operation != Operation::read &&
               operation != Operation::map;
      case Trouble::full:
      case Trouble::full_for_all:
        return operation == Operation::write || operation == Operation::map;
      case Trouble::none:
      case Trouble::fails_once:
      case Trouble::fails:
        return true;
    }
    return true;
  }

  // Counts the operation; does it fail?
  bool fails(Operation operation, bool makes_longer = false) {
    if (trouble == Trouble::power_cut && has_failed) return true;
    if (!counts(operation)) return false;
    ++count;
    if (trouble == Trouble::none || count < at) return false;
    if (trouble == Trouble::full && !makes_longer) return false;
    if (trouble == Trouble::full_for_all && operation == Operation::map && !makes_longer) {
      return false;
    }
    if (trouble == Trouble::fails_once && count > at) return false;
    has_failed = true;
    return true;
  }
};

namespace {

// What SQLite holds as an open file; the real one follows it in memory.
struct OpenFile {
  sqlite3_file as_sqlite;
  FailingDisk::Vfs* disk;
  const char* path;  // null where it is not recorded: what SQLite sorts in
  bool syncs_folder;
};

FailingDisk::Vfs& disk_of(sqlite3_vfs* vfs) {
  return *static_cast<FailingDisk::Vfs*>(vfs->pAppData);
}

OpenFile& open_file(sqlite3_file* file) { return *reinterpret_cast<OpenFile*>(file); }

sqlite3_file* real_of(sqlite3_file* file) {
  return reinterpret_cast<sqlite3_file*>(reinterpret_cast<OpenFile*>(file) + 1);
}

// The operation at which the power goes may have come through, in whole or in part.
bool is_off(const FailingDisk::Vfs& disk) {
  return disk.trouble == Trouble::power_cut && disk.has_failed;
}

std::string name_of(const char* path) { return std::filesystem::path(path).filename(); }

int close_file(sqlite3_file* file) { return real_of(file)->pMethods->xClose(real_of(file)); }

int read_file(sqlite3_file* file, void* into, int size, sqlite3_int64 place) {
  if (open_file(file).disk->fails(Operation::read)) return SQLITE_IOERR_READ;
  return real_of(file)->pMethods->xRead(real_of(file), into, size, place);
}

void write_and_record(sqlite3_file* file, const void* from, int size, sqlite3_int64 place) {
  const OpenFile& open = open_file(file);
  (void)real_of(file)->pMethods->xWrite(real_of(file), from, size, place);
  if (open.path == nullptr) return;
  open.disk->record.wrote(
      name_of(open.path),
      static_cast<std::uint64_t>(place),
      std::string(static_cast<const char*>(from), static_cast<std::size_t>(size)));
}

int write_file(sqlite3_file* file, const void* from, int size, sqlite3_int64 place) {
  FailingDisk::Vfs& disk = *open_file(file).disk;
  sqlite3_int64 length = 0;
  (void)real_of(file)->pMethods->xFileSize(real_of(file), &length);
  const bool was_off = is_off(disk);
  if (!disk.fails(Operation::write, place + size > length)) {
    write_and_record(file, from, size, place);
    return SQLITE_OK;
  }
  switch (disk.trouble) {
    case Trouble::full:
    case Trouble::full_for_all:
      write_and_record(file, from, size / 2, place);  // what there was room for
      return SQLITE_FULL;
    case Trouble::power_cut:
      if (!was_off) write_and_record(file, from, size, place);
      return SQLITE_IOERR_WRITE;
    case Trouble::none:
    case Trouble::fails_once:
    case Trouble::fails:
      return SQLITE_IOERR_WRITE;
  }
  return SQLITE_IOERR_WRITE;
}

int resize_file(sqlite3_file* file, sqlite3_int64 size) {
  const OpenFile& open = open_file(file);
  const bool was_off = is_off(*open.disk);
  const bool fails = open.disk->fails(Operation::resize);
  if (open.path != nullptr && !was_off && (!fails || is_off(*open.disk))) {
    open.disk->record.resized(name_of(open.path), static_cast<std::uint64_t>(size));
  }
  if (fails) return SQLITE_IOERR_TRUNCATE;
  return real_of(file)->pMethods->xTruncate(real_of(file), size);
}

int sync_file(sqlite3_file* file, int /*flags*/) {
  OpenFile& open = open_file(file);
  if (open.disk->fails(Operation::sync)) return SQLITE_IOERR_FSYNC;
  if (open.path == nullptr) return SQLITE_OK;
  open.disk->record.synced(name_of(open.path));
  if (open.syncs_folder) open.disk->record.folder_synced();
  open.syncs_folder = false;
  return SQLITE_OK;
}

int file_size(sqlite3_file* file, sqlite3_int64* size) {
  if (open_file(file).disk->fails(Operation::read)) return SQLITE_IOERR_FSTAT;
  return real_of(file)->pMethods->xFileSize(real_of(file), size);
}

int lock_file(sqlite3_file* file, int level) {
  return real_of(file)->pMethods->xLock(real_of(file), level);
}
int unlock_file(sqlite3_file* file, int level) {
  return real_of(file)->pMethods->xUnlock(real_of(file), level);
}
int is_reserved(sqlite3_file* file, int* answer) {
  return real_of(file)->pMethods->xCheckReservedLock(real_of(file), answer);
}
int control_file(sqlite3_file* file, int what, void* argument) {
  return real_of(file)->pMethods->xFileControl(real_of(file), what, argument);
}
int sector_size(sqlite3_file* file) { return real_of(file)->pMethods->xSectorSize(real_of(file)); }
int characteristics(sqlite3_file* file) {
  return real_of(file)->pMethods->xDeviceCharacteristics(real_of(file));
}

int map_shared(sqlite3_file* file, int region, int size, int extend, void volatile** memory) {
  FailingDisk::Vfs& disk = *open_file(file).disk;
  if (disk.fails(Operation::map, extend != 0)) {
    const bool is_full = disk.trouble == Trouble::full || disk.trouble == Trouble::full_for_all;
    return is_full ? SQLITE_IOERR_SHMSIZE : SQLITE_IOERR_SHMMAP;
  }
  return real_of(file)->pMethods->xShmMap(real_of(file), region, size, extend, memory);
}
int lock_shared(sqlite3_file* file, int offset, int count, int flags) {
  return real_of(file)->pMethods->xShmLock(real_of(file), offset, count, flags);
}
void barrier(sqlite3_file* file) { real_of(file)->pMethods->xShmBarrier(real_of(file)); }
int unmap_shared(sqlite3_file* file, int remove) {
  return real_of(file)->pMethods->xShmUnmap(real_of(file), remove);
}

// Version 2: with shared memory, without mapping of the file itself, which would pass writes by.
const sqlite3_io_methods kMethods{.iVersion = 2,
                                  .xClose = close_file,
                                  .xRead = read_file,
                                  .xWrite = write_file,
                                  .xTruncate = resize_file,
                                  .xSync = sync_file,
                                  .xFileSize = file_size,
                                  .xLock = lock_file,
                                  .xUnlock = unlock_file,
                                  .xCheckReservedLock = is_reserved,
                                  .xFileControl = control_file,
                                  .xSectorSize = sector_size,
                                  .xDeviceCharacteristics = characteristics,
                                  .xShmMap = map_shared,
                                  .xShmLock = lock_shared,
                                  .xShmBarrier = barrier,
                                  .xShmUnmap = unmap_shared,
                                  .xFetch = nullptr,
                                  .xUnfetch = nullptr};

// A file that is there with something in it was there for long; an empty one was just made.
void begin_record(DiskRecord& record, const char* path) {
  const std::string name = name_of(path);
  if (record.knows(name)) return;
  std::ifstream file(path, std::ios::binary);
  const std::string content{std::istreambuf_iterator<char>(file), {}};
  if (content.empty()) {
    record.made(name);
  } else {
    record.found(name, content);
  }
}

int open_at(sqlite3_vfs* vfs, const char* path, sqlite3_file* file, int flags, int* flags_out) {
  FailingDisk::Vfs& disk = disk_of(vfs);
  OpenFile& open = open_file(file);
  open.as_sqlite.pMethods = nullptr;
  if (disk.fails(Operation::open)) return SQLITE_CANTOPEN;
  constexpr int kLogs = SQLITE_OPEN_WAL | SQLITE_OPEN_MAIN_JOURNAL;
  const bool is_recorded = path != nullptr && (flags & (kLogs | SQLITE_OPEN_MAIN_DB)) != 0;
  if (is_recorded) begin_record(disk.record, path);
  const int code = disk.real->xOpen(disk.real, path, real_of(file), flags, flags_out);
  if (code != SQLITE_OK) {
    if (real_of(file)->pMethods != nullptr) (void)close_file(file);
    return code;
  }
  open.as_sqlite.pMethods = &kMethods;
  open.disk = &disk;
  open.path = is_recorded ? path : nullptr;
  open.syncs_folder = (flags & kLogs) != 0 && (flags & SQLITE_OPEN_CREATE) != 0;
  return SQLITE_OK;
}

int remove_at(sqlite3_vfs* vfs, const char* path, int syncs_folder) {
  FailingDisk::Vfs& disk = disk_of(vfs);
  const bool was_off = is_off(disk);
  if (disk.fails(Operation::remove)) {
    if (is_off(disk) && !was_off) disk.record.removed(name_of(path));
    return SQLITE_IOERR_DELETE;
  }
  const int code = disk.real->xDelete(disk.real, path, 0);
  if (code == SQLITE_OK) disk.record.removed(name_of(path));
  if (code == SQLITE_OK && syncs_folder != 0) disk.record.folder_synced();
  return code;
}

int access_at(sqlite3_vfs* vfs, const char* path, int flags, int* answer) {
  FailingDisk::Vfs& disk = disk_of(vfs);
  if (disk.fails(Operation::read)) return SQLITE_IOERR_ACCESS;
  return disk.real->xAccess(disk.real, path, flags, answer);
}

}  // namespace

FailingDisk::FailingDisk() : vfs_(std::make_unique<Vfs>()) {
  vfs_->real = sqlite3_vfs_find("unix");
  vfs_->as_sqlite = *vfs_->real;  // time, randomness and names are the real one's
  vfs_->as_sqlite.pNext = nullptr;
  vfs_->as_sqlite.zName = "keenfall-failing-disk";
  vfs_->as_sqlite.pAppData = vfs_.get();
  vfs_->as_sqlite.szOsFile = static_cast<int>(sizeof(OpenFile)) + vfs_->real->szOsFile;
  vfs_->as_sqlite.xOpen = open_at;
  vfs_->as_sqlite.xDelete = remove_at;
  vfs_->as_sqlite.xAccess = access_at;
  sqlite3_vfs_register(&vfs_->as_sqlite, 1);
}

FailingDisk::~FailingDisk() {
  sqlite3_vfs_unregister(&vfs_->as_sqlite);
  sqlite3_vfs_register(vfs_->real, 1);
}

void FailingDisk::expect(Trouble trouble, int at) {
  vfs_->trouble = trouble;
  vfs_->at = at;
  vfs_->count = 0;
  vfs_->has_failed = false;
}

int FailingDisk::operations() const { return vfs_->count; }
bool FailingDisk::has_failed() const { return vfs_->has_failed; }
const DiskRecord& FailingDisk::record() const { return vfs_->record; }

}  // namespace keenfall::notebook::testing
