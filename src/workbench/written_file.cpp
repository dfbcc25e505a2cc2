#include "workbench/written_file.h"

#include "notebook/random_uid.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <string_view>
#include <system_error>
#include <utility>

namespace keenfall::workbench {

namespace {

base::Problem cannot_write(const std::string& path, const std::string& why) {
  return {.kind = base::ProblemKind::unreadable,
          .sentence = "The file \"" + path + "\" cannot be written: " + why + ".",
          .place = {.found = path}};
}

base::Problem is_there_already(const std::string& path) {
  return cannot_write(path, "it exists already, and is left as it is; name a new file");
}

// Each fails with errno as it is left.
bool write_all(int descriptor, std::string_view content) {
  while (!content.empty()) {
    const ssize_t count = write(descriptor, content.data(), content.size());
    if (count < 0 && errno == EINTR) continue;
    if (count < 0) return false;
    content.remove_prefix(static_cast<std::size_t>(count));
  }
  return true;
}

bool close_after(int descriptor, bool is_well) {
  const int fault = errno;
  const bool is_closed = close(descriptor) == 0;
  if (!is_well) errno = fault;
  return is_well && is_closed;
}

// To what is no file: a pipe, a terminal.
bool written_through(const std::string& path, const std::string& content) {
  const int descriptor = open(path.c_str(), O_WRONLY | O_CLOEXEC);
  return descriptor >= 0 && close_after(descriptor, write_all(descriptor, content));
}

// A file beside another, under a name that nothing had; gone again unless it is given that name.
class UnfinishedFile {
 public:
  explicit UnfinishedFile(const std::filesystem::path& target)
      : path_(target.parent_path() / ("unfinished-" + notebook::random_uid())) {}
  UnfinishedFile(const UnfinishedFile&) = delete;
  UnfinishedFile& operator=(const UnfinishedFile&) = delete;
  UnfinishedFile(UnfinishedFile&&) = delete;
  UnfinishedFile& operator=(UnfinishedFile&&) = delete;
  ~UnfinishedFile() {
    if (is_made_) unlink(path_.c_str());
  }

  // False with errno where it cannot be. `mode`: the rights it gets, if not those of a new file.
  bool hold(const std::string& content, std::optional<mode_t> mode) {
    const int descriptor = open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (descriptor < 0) return false;
    is_made_ = true;
    const bool is_well = write_all(descriptor, content) &&
                         (!mode || fchmod(descriptor, *mode) == 0) && fsync(descriptor) == 0;
    return close_after(descriptor, is_well);
  }

  std::error_code give_name(const std::filesystem::path& name, Existing existing) {
    const std::error_code fault = give_lasting_name(path_, name, existing);
    if (!fault) is_made_ = false;
    return fault;
  }

 private:
  std::filesystem::path path_;
  bool is_made_ = false;
};

}  // namespace

std::optional<base::Problem> write_whole_file(const std::string& path,
                                              const std::string& content,
                                              Existing existing) {
  struct stat there {};
  const bool is_there = stat(path.c_str(), &there) == 0;
  if (is_there && existing == Existing::is_kept) return is_there_already(path);
  if (is_there && !S_ISREG(there.st_mode)) {
    if (written_through(path, content)) return std::nullopt;
    return cannot_write(path, std::generic_category().message(errno));
  }
  std::error_code fault;
  const std::filesystem::path real =
      is_there ? std::filesystem::canonical(path, fault) : std::filesystem::path(path);
  if (fault) return cannot_write(path, fault.message());
  UnfinishedFile unfinished(real);
  const auto mode = is_there ? std::optional<mode_t>(there.st_mode & 07777U) : std::nullopt;
  if (!unfinished.hold(content, mode)) {
    return cannot_write(path, std::generic_category().message(errno));
  }
  fault = unfinished.give_name(real, existing);
  if (fault == std::errc::file_exists && existing == Existing::is_kept) {
    return is_there_already(path);
  }
  if (fault) return cannot_write(path, fault.message());
  return std::nullopt;
}

std::optional<base::Problem> problem_with_new_file(const std::string& path) {
  std::error_code fault;
  if (std::filesystem::exists(path, fault)) return is_there_already(path);
  const std::filesystem::path folder = std::filesystem::path(path).parent_path();
  if (!folder.empty() && !std::filesystem::is_directory(folder, fault)) {
    return cannot_write(path, "there is no folder \"" + folder.string() + "\"");
  }
  return std::nullopt;
}

}  // namespace keenfall::workbench
