#include "notebook/new_file.h"

#include "notebook/log_beside.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>
#include <utility>

namespace keenfall::notebook {

namespace {

base::Problem cannot_be_made(const std::string& path,
                             const std::string& sentence,
                             const std::string& accepted = "") {
  return {.kind = base::ProblemKind::unreadable,
          .sentence = sentence,
          .place = {.file = path},
          .accepted = accepted};
}

bool is_there(const std::string& path) {
  struct stat about {};
  return lstat(path.c_str(), &about) == 0;
}

base::Problem name_is_taken(const std::string& path) {
  return cannot_be_made(path, "There is something of this name already; it was left as it is.");
}

base::Problem not_allowed_here(const std::string& path, const std::string& kind, int fault) {
  return cannot_be_made(
      path, "No " + kind + " can be made here: " + std::generic_category().message(fault) + ".");
}

}  // namespace

std::optional<base::Problem> problem_of_new_name(const std::string& path, const std::string& kind) {
  if (is_there(path)) return name_is_taken(path);
  const std::size_t slash = path.find_last_of('/');
  const std::string folder = slash == std::string::npos ? "." : path.substr(0, slash + 1);
  if (access(folder.c_str(), W_OK) != 0) return not_allowed_here(path, kind, errno);
  const auto log = log_beside(path);
  if (!log) return std::nullopt;
  return cannot_be_made(path,
                        "No " + kind + " can be made here: " + *log +
                            " holds the last changes of another notebook, which had this name. It "
                            "was left as it is.",
                        "that notebook under this name again, where it takes them in; or another "
                        "name for the " +
                            kind);
}

base::Result<NewFile> NewFile::make(const std::string& path, const std::string& kind) {
  if (auto problem = problem_of_new_name(path, kind)) return base::failed(std::move(*problem));
  std::vector<std::string> made{path};
  for (const char* ending : {"-journal", "-wal", "-shm"}) {
    if (!is_there(path + ending)) made.push_back(path + ending);
  }
  const int descriptor = ::open(path.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0644);
  if (descriptor < 0) {
    if (errno == EEXIST) return base::failed(name_is_taken(path));
    return base::failed(not_allowed_here(path, kind, errno));
  }
  ::close(descriptor);  // before SQLite opens it
  return NewFile(std::move(made));
}

NewFile::NewFile(std::vector<std::string> made) : made_(std::move(made)) {}

NewFile::NewFile(NewFile&& other) noexcept : made_(std::exchange(other.made_, {})) {}

NewFile::~NewFile() {
  for (const std::string& path : made_) unlink(path.c_str());
}

}  // namespace keenfall::notebook
