#include "workbench/lasting_name.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>

namespace keenfall::workbench {

namespace {

std::error_code last_error() { return {errno, std::generic_category()}; }

// For disks that have no renaming without replacing.
std::error_code link_and_unlink(const char* from, const char* to) {
  if (link(from, to) != 0) return last_error();
  unlink(from);
  return {};
}

std::error_code rename_where_nothing_is(const char* from, const char* to) {
  if (renameat2(AT_FDCWD, from, AT_FDCWD, to, RENAME_NOREPLACE) == 0) return {};
  if (errno != EINVAL && errno != ENOSYS) return last_error();
  const std::error_code linked = link_and_unlink(from, to);
  if (!linked || linked == std::errc::file_exists) return linked;
  struct stat about {};  // no links either, or a folder: what is left is to look first
  if (lstat(to, &about) == 0) return std::make_error_code(std::errc::file_exists);
  return std::rename(from, to) == 0 ? std::error_code() : last_error();
}

}  // namespace

std::error_code give_lasting_name(const std::filesystem::path& from,
                                  const std::filesystem::path& to,
                                  Existing existing) {
  if (existing == Existing::is_kept) {
    if (auto fault = rename_where_nothing_is(from.c_str(), to.c_str())) return fault;
  } else if (std::rename(from.c_str(), to.c_str()) != 0) {
    return last_error();
  }
  return sync_folder(to.parent_path());
}

std::error_code sync_folder(const std::filesystem::path& folder) {
  const char* name = folder.empty() ? "." : folder.c_str();
  const int descriptor = open(name, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor < 0) return {};
  const bool has_failed = fsync(descriptor) != 0 && errno == EIO;
  const std::error_code fault = has_failed ? last_error() : std::error_code();
  close(descriptor);
  return fault;
}

}  // namespace keenfall::workbench
