#include "notebook/file_lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <mutex>
#include <system_error>
#include <utility>
#include <vector>

namespace keenfall::notebook {

namespace {

bool is_one_file(const struct stat& one, const struct stat& other) {
  return one.st_dev == other.st_dev && one.st_ino == other.st_ino;
}

// The descriptors that are not closed. What a process has in memory, a forked one has too, and
// shares the locks of the first: so each begins anew.
class KeptDescriptors {
 public:
  // Of the file that `about` tells of; -1: none.
  int take(const struct stat& about) {
    const std::scoped_lock lock(mutex_);
    begin_anew_where_forked();
    const auto found = std::ranges::find_if(kept_, [&](int descriptor) {
      struct stat its {};
      return fstat(descriptor, &its) == 0 && is_one_file(its, about);
    });
    if (found == kept_.end()) return -1;
    const int descriptor = *found;
    kept_.erase(found);
    return descriptor;
  }

  void keep(int descriptor) {
    const std::scoped_lock lock(mutex_);
    begin_anew_where_forked();
    kept_.push_back(descriptor);
    std::erase_if(kept_, [](int one) {
      struct stat its {};
      const bool has_no_name = fstat(one, &its) == 0 && its.st_nlink == 0;
      if (has_no_name) close(one);
      return has_no_name;
    });
  }

 private:
  void begin_anew_where_forked() {
    if (owner_ != getpid()) kept_.clear();
    owner_ = getpid();
  }

  std::mutex mutex_;
  pid_t owner_ = getpid();
  std::vector<int> kept_;
};

// The one thing of the process's own here: its locks are the process's, too.
KeptDescriptors& kept_descriptors() {
  static KeptDescriptors kept;
  return kept;
}

base::Problem cannot_be_locked(const std::string& path, int fault) {
  return {.kind = base::ProblemKind::unreadable,
          .sentence = "The notebook cannot be locked, and so not be written to: " +
                      std::generic_category().message(fault) + ".",
          .place = {.file = path},
          .accepted = "a disk on which files can be locked"};
}

}  // namespace

base::Result<FileLock> FileLock::take(const std::string& path, const std::string& shown_path) {
  for (;;) {
    struct stat about {};
    if (stat(path.c_str(), &about) != 0) return base::failed(cannot_be_locked(shown_path, errno));
    int descriptor = kept_descriptors().take(about);
    if (descriptor < 0) descriptor = open(path.c_str(), O_RDWR | O_CLOEXEC);
    if (descriptor < 0) return base::failed(cannot_be_locked(shown_path, errno));
    if (flock(descriptor, LOCK_EX | LOCK_NB) != 0) {
      const int fault = errno;
      kept_descriptors().keep(descriptor);
      if (fault != EWOULDBLOCK) return base::failed(cannot_be_locked(shown_path, fault));
      return base::failed({.kind = base::ProblemKind::conflicting,
                           .sentence = "The notebook is being written to by another process, which "
                                       "opened it by another name, and one writes at a time.",
                           .place = {.file = shown_path},
                           .accepted = "waiting until that is done, or reading it meanwhile"});
    }
    FileLock lock(descriptor, path, shown_path);
    if (lock.is_at_its_path()) return lock;  // and was not replaced just then
  }
}

FileLock::FileLock(int descriptor, std::string path, std::string shown_path)
    : descriptor_(descriptor), path_(std::move(path)), shown_path_(std::move(shown_path)) {}

FileLock::FileLock(FileLock&& other) noexcept
    : descriptor_(std::exchange(other.descriptor_, -1)),
      path_(std::move(other.path_)),
      shown_path_(std::move(other.shown_path_)) {}

FileLock::~FileLock() {
  if (descriptor_ < 0) return;
  flock(descriptor_, LOCK_UN);
  kept_descriptors().keep(descriptor_);
}

bool FileLock::is_at_its_path() const {
  struct stat own {};
  struct stat of_path {};
  return fstat(descriptor_, &own) == 0 && stat(path_.c_str(), &of_path) == 0 &&
         is_one_file(own, of_path);
}

std::optional<base::Problem> FileLock::problem() const {
  if (!is_at_its_path()) {
    return base::Problem{.kind = base::ProblemKind::unreadable,
                         .sentence =
                             "The notebook was moved, renamed or replaced while it was open "
                             "for writing, so nothing of this change was kept.",
                         .place = {.file = shown_path_},
                         .accepted = "the change once more, by the name that the notebook has now"};
  }
  struct stat own {};
  if (fstat(descriptor_, &own) != 0 || own.st_nlink <= 1) return std::nullopt;
  return base::Problem{
      .kind = base::ProblemKind::unreadable,
      .sentence = "This file has " + std::to_string(own.st_nlink) +
                  " names (hard links). Changes lie beside one of them for a while and would be "
                  "missed by who comes by another, so it is not written to.",
      .place = {.file = shown_path_},
      .accepted =
          "a copy of its own, which keenfall backup makes; or one name, the others deleted"};
}

}  // namespace keenfall::notebook
