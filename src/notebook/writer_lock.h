// The right to write a notebook: one process at a time.
//
// Two locks: on a file beside it, in which stands who writes, for what SQLite keeps beside it is
// named after it; and on the notebook's file itself, which may have been renamed meanwhile.
#pragma once

#include "base/result.h"
#include "notebook/file_lock.h"

#include <optional>
#include <string>

namespace keenfall::notebook {

class WriterLock {
 public:
  // Of the notebook at `path`. `words`: who writes, for whoever comes second ("R. on bench-2,
  // process 4711, since 2026-11-26T12:00:00Z"). Fails with these words of the first where taken,
  // or when the folder cannot be written to. The notebook's file need not be there yet.
  [[nodiscard]] static base::Result<WriterLock> take(const std::string& path,
                                                     const std::string& words);

  WriterLock(WriterLock&& other) noexcept;
  WriterLock& operator=(WriterLock&&) = delete;
  WriterLock(const WriterLock&) = delete;
  WriterLock& operator=(const WriterLock&) = delete;
  ~WriterLock();  // gives it back

  // Locks the file, too, before SQLite opens it. Fails where another writes it by another name, or
  // where it has several.
  [[nodiscard]] std::optional<base::Problem> hold_file();

  // Of a file that is held: does its path still name it; why it is not to be written to now.
  [[nodiscard]] bool is_at_its_path() const;
  [[nodiscard]] std::optional<base::Problem> problem() const;
  [[nodiscard]] const std::string& notebook_path() const { return notebook_path_; }  // the real one

 private:
  WriterLock(int descriptor, std::string notebook_path, std::string shown_path);

  int descriptor_ = -1;
  std::string notebook_path_;
  std::string shown_path_;
  std::string lock_path_;
  std::optional<FileLock> file_;
};

}  // namespace keenfall::notebook
