#include "workbench/new_folder.h"

#include "workbench/lasting_name.h"
#include "workbench/written_file.h"

#include <cerrno>
#include <cstdlib>
#include <system_error>

namespace keenfall::workbench {

namespace {

std::string without_slashes_behind(std::string path) {
  while (path.size() > 1 && path.ends_with('/')) path.pop_back();
  return path;
}

}  // namespace

NewFolder::NewFolder(const std::string& path) : path_(without_slashes_behind(path)) {}

NewFolder::~NewFolder() {
  std::error_code ignored;
  if (!scratch_.empty()) std::filesystem::remove_all(scratch_, ignored);
}

std::optional<base::Problem> NewFolder::make() {
  if (auto problem = problem_of_name()) return problem;
  std::string scratch = (path_.parent_path() / "unfinished-export-XXXXXX").string();
  if (mkdtemp(scratch.data()) == nullptr) {
    return cannot_be_made(std::generic_category().message(errno));
  }
  scratch_ = scratch;
  std::error_code fault;
  std::filesystem::create_directory(unfinished(), fault);
  if (fault) return cannot_be_made(fault.message());
  return std::nullopt;
}

std::optional<base::Problem> NewFolder::write(const std::string& name, const std::string& text) {
  return write_whole_file(unfinished() / name, text, Existing::is_kept);
}

std::optional<base::Problem> NewFolder::give_name() {
  if (auto problem = problem_of_name()) return problem;
  std::error_code fault = sync_folder(unfinished());
  if (!fault) fault = give_lasting_name(unfinished(), path_, Existing::is_kept);
  if (fault == std::errc::file_exists) return name_is_taken();
  if (!fault) return std::nullopt;
  return cannot_be_made(fault.message());
}

// With the rights that a new folder has here; the one it lies in is for its owner alone.
std::filesystem::path NewFolder::unfinished() const { return scratch_ / "folder"; }

std::optional<base::Problem> NewFolder::problem_of_name() const {
  std::error_code fault;
  const auto there = std::filesystem::symlink_status(path_, fault);
  if (std::filesystem::exists(there)) {
    return name_is_taken();
  }
  if (!std::filesystem::status_known(there)) return cannot_be_made(fault.message());
  return std::nullopt;
}

base::Problem NewFolder::name_is_taken() const {
  return cannot_be_made("there is something of this name already; it was left as it is");
}

base::Problem NewFolder::cannot_be_made(const std::string& why) const {
  return {.kind = base::ProblemKind::unreadable,
          .sentence = "The folder \"" + path_.string() + "\" cannot be made: " + why + ".",
          .place = {.found = path_.string()}};
}

}  // namespace keenfall::workbench
