#include "trust/held_folder.h"

#include <system_error>
#include <utility>

#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

namespace keenfall::trust {

base::Result<HeldFolder> HeldFolder::hold(const std::filesystem::path& folder) {
  std::error_code not_made;
  std::filesystem::create_directories(folder, not_made);
  const std::string lock = (folder / "lock").string();
  constexpr mode_t kForTheOwner = 0644;
  // NOLINTNEXTLINE(cppcoreguidelines-pro-type-vararg): open is POSIX
  const int file = open(lock.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, kForTheOwner);
  if (file < 0) {
    return base::failed({.kind = base::ProblemKind::unreadable,
                         .sentence = "Results cannot be kept in " + folder.string() +
                                     ": the folder cannot be made or written to."});
  }
  HeldFolder held(file);
  if (flock(file, LOCK_EX | LOCK_NB) != 0) {
    return base::failed({.kind = base::ProblemKind::unreadable,
                         .sentence = "Results in " + folder.string() +
                                     " are being measured by another program already.",
                         .accepted = "waiting until it is done, or another --folder"});
  }
  return held;
}

HeldFolder::HeldFolder(HeldFolder&& other) noexcept : file_(std::exchange(other.file_, -1)) {}

HeldFolder::~HeldFolder() {
  if (file_ >= 0) close(file_);
}

}  // namespace keenfall::trust
