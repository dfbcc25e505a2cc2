// For tests: a disk that fails when it is told to, under everything that SQLite opens while this
// object lives (a VFS, registered as the default one; see https://sqlite.org/vfs.html).
//
// Files are read and written as ever, but not synced; what a sync would have made certain is kept
// by a DiskRecord, as os_unix.c of SQLite 3.40 does it: the first sync of a journal or log that was
// just made syncs the folder too. Files lie in one folder; locks and shared memory are the
// machine's own.
#pragma once

#include "notebook/disk_record.h"

#include <memory>
#include <string>

namespace keenfall::notebook::testing {

enum class Trouble {
  none,
  power_cut,     // at the n-th write, resizing, sync or removal, and all fails from there on
  full,          // from the n-th write on, those fail that make a file longer
  full_for_all,  // from the n-th write on, all writes fail: where a write takes new room
  fails_once,    // the n-th operation of any kind
  fails,         // every operation from the n-th on
};

class FailingDisk {
 public:
  FailingDisk();
  ~FailingDisk();
  FailingDisk(const FailingDisk&) = delete;
  FailingDisk& operator=(const FailingDisk&) = delete;
  FailingDisk(FailingDisk&&) = delete;
  FailingDisk& operator=(FailingDisk&&) = delete;

  // Counts operations from here; the first is 1.
  void expect(Trouble trouble, int at);
  // All is well from here on.
  void mend() { expect(Trouble::none, 0); }

  [[nodiscard]] int operations() const;  // of the kinds that count, since expect()
  [[nodiscard]] bool has_failed() const;
  [[nodiscard]] const DiskRecord& record() const;

  struct Vfs;

 private:
  std::unique_ptr<Vfs> vfs_;
};

}  // namespace keenfall::notebook::testing
