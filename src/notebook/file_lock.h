// The lock on a notebook's file itself, which is the same by whatever name the file is reached.
// Private to the folder.
//
// flock(2), which does not mix with SQLite's own locks. But closing any descriptor of a file takes
// away all locks that SQLite holds on it in this process (fcntl(2)): so descriptors are not closed,
// but kept for whoever locks the same file next, while the process lives and the file has a name.
#pragma once

#include "base/result.h"

#include <optional>
#include <string>

namespace keenfall::notebook {

class FileLock {
 public:
  // Of the file at `path`, its real one, which is what a problem names as `shown_path`. Fails where
  // another has it, also in this process.
  [[nodiscard]] static base::Result<FileLock> take(const std::string& path,
                                                   const std::string& shown_path);

  FileLock(FileLock&& other) noexcept;
  FileLock& operator=(FileLock&&) = delete;
  FileLock(const FileLock&) = delete;
  FileLock& operator=(const FileLock&) = delete;
  ~FileLock();  // gives it back

  // Does the path that it was taken by still name this file?
  [[nodiscard]] bool is_at_its_path() const;
  // Why the file is not to be written to: it is elsewhere now, or has a second name.
  [[nodiscard]] std::optional<base::Problem> problem() const;

 private:
  FileLock(int descriptor, std::string path, std::string shown_path);

  int descriptor_ = -1;
  std::string path_;
  std::string shown_path_;
};

}  // namespace keenfall::notebook
