#include "notebook/writer_lock.h"

#include "base/require.h"
#include "notebook/file_header.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <system_error>
#include <utility>

namespace keenfall::notebook {

namespace {

std::string read_words(int descriptor) {
  std::array<char, 512> buffer{};
  const ssize_t count = pread(descriptor, buffer.data(), buffer.size(), 0);
  std::string words(buffer.data(), static_cast<std::size_t>(count > 0 ? count : 0));
  return words.substr(0, words.find('\n'));
}

// Does the path still name the file that is locked? The one before may have taken it away just
// then.
bool is_still_there(int descriptor, const std::string& path) {
  struct stat of_lock {};
  struct stat of_path {};
  return fstat(descriptor, &of_lock) == 0 && stat(path.c_str(), &of_path) == 0 &&
         of_lock.st_ino == of_path.st_ino && of_lock.st_dev == of_path.st_dev;
}

}  // namespace

base::Result<WriterLock> WriterLock::take(const std::string& path, const std::string& words) {
  const std::string notebook_path = real_path(path);
  const std::string lock_path = notebook_path + ".writer";
  for (;;) {
    const int descriptor = open(lock_path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0644);
    if (descriptor < 0) {
      return base::failed({.kind = base::ProblemKind::unreadable,
                           .sentence = "The notebook cannot be written to: beside it " + lock_path +
                                       " cannot be made (" +
                                       std::generic_category().message(errno) + ").",
                           .place = {.file = path},
                           .accepted = "a folder that may be written to"});
    }
    if (flock(descriptor, LOCK_EX | LOCK_NB) != 0) {
      const std::string holder = read_words(descriptor);
      close(descriptor);
      return base::failed({.kind = base::ProblemKind::conflicting,
                           .sentence = "The notebook is being written to by " +
                                       (holder.empty() ? "another process" : holder) +
                                       ", and one writes at a time.",
                           .place = {.file = path},
                           .accepted = "waiting until that is done, or reading it meanwhile"});
    }
    if (!is_still_there(descriptor, lock_path)) {
      close(descriptor);
      continue;
    }
    const std::string line = words + "\n";
    // Who holds it is told to others; that the lock is held does not depend on it.
    if (ftruncate(descriptor, 0) == 0) {
      [[maybe_unused]] const auto written = pwrite(descriptor, line.data(), line.size(), 0);
    }
    return WriterLock(descriptor, notebook_path, path);
  }
}

WriterLock::WriterLock(int descriptor, std::string notebook_path, std::string shown_path)
    : descriptor_(descriptor),
      notebook_path_(std::move(notebook_path)),
      shown_path_(std::move(shown_path)),
      lock_path_(notebook_path_ + ".writer") {}

WriterLock::WriterLock(WriterLock&& other) noexcept
    : descriptor_(std::exchange(other.descriptor_, -1)),
      notebook_path_(std::move(other.notebook_path_)),
      shown_path_(std::move(other.shown_path_)),
      lock_path_(std::move(other.lock_path_)),
      file_(std::move(other.file_)) {}

WriterLock::~WriterLock() {
  if (descriptor_ < 0) return;
  if (is_still_there(descriptor_, lock_path_)) unlink(lock_path_.c_str());
  close(descriptor_);
}

std::optional<base::Problem> WriterLock::hold_file() {
  auto file = FileLock::take(notebook_path_, shown_path_);
  if (!file) return file.error();
  if (auto problem = file->problem()) return problem;
  file_.emplace(std::move(*file));
  return std::nullopt;
}

bool WriterLock::is_at_its_path() const { return file_ && file_->is_at_its_path(); }

std::optional<base::Problem> WriterLock::problem() const {
  base::require(file_.has_value(), "the file is held");
  return file_->problem();
}

}  // namespace keenfall::notebook
