// The right to write a notebook: one process at a time, told apart by a lock on a file beside it.
#pragma once

#include "base/result.h"

#include <string>

namespace keenfall::notebook {

class WriterLock {
 public:
  // Of the notebook at `path`. `words`: who writes, for whoever comes second ("R. on bench-2,
  // process 4711, since 2026-11-26T12:00:00Z"). Fails with these words of the first where taken,
  // or when the folder cannot be written to.
  [[nodiscard]] static base::Result<WriterLock> take(const std::string& path,
                                                     const std::string& words);

  WriterLock(WriterLock&& other) noexcept;
  WriterLock& operator=(WriterLock&&) = delete;
  WriterLock(const WriterLock&) = delete;
  WriterLock& operator=(const WriterLock&) = delete;
  ~WriterLock();  // gives it back

 private:
  WriterLock(int descriptor, std::string lock_path);

  int descriptor_ = -1;
  std::string lock_path_;
};

}  // namespace keenfall::notebook
