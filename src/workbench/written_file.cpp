#include "workbench/written_file.h"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <system_error>

namespace keenfall::workbench {

namespace {

base::Problem cannot_write(const std::string& path, const std::string& why) {
  return {.kind = base::ProblemKind::unreadable,
          .sentence = "The file \"" + path + "\" cannot be written: " + why + ".",
          .place = {.found = path}};
}

std::string why_it_failed() { return errno == 0 ? "unknown reason" : std::strerror(errno); }

base::Problem exists_already(const std::string& path) {
  return cannot_write(path, "it exists already, and is left as it is; name a new file");
}

bool written_to(const std::string& path, const std::string& content) {
  std::ofstream file(path, std::ios::binary | std::ios::trunc);
  file << content;
  file.close();
  return static_cast<bool>(file);
}

}  // namespace

std::optional<base::Problem> write_whole_file(const std::string& path,
                                              const std::string& content,
                                              Existing existing) {
  std::error_code fault;
  const auto status = std::filesystem::status(path, fault);
  const bool is_there = std::filesystem::exists(status);
  if (is_there && existing == Existing::is_kept) {
    return exists_already(path);
  }
  errno = 0;
  const bool is_special = is_there && !std::filesystem::is_regular_file(status);
  if (is_special) {
    if (!written_to(path, content)) return cannot_write(path, why_it_failed());
    return std::nullopt;
  }
  const std::string real_path = is_there ? std::filesystem::canonical(path, fault).string() : path;
  const std::string unfinished = real_path + ".unfinished";
  if (!written_to(unfinished, content)) {
    const base::Problem problem = cannot_write(path, why_it_failed());
    std::filesystem::remove(unfinished, fault);
    return problem;
  }
  std::filesystem::rename(unfinished, real_path, fault);
  if (fault) return cannot_write(path, fault.message());
  return std::nullopt;
}

std::optional<base::Problem> problem_with_new_file(const std::string& path) {
  std::error_code fault;
  if (std::filesystem::exists(path, fault)) return exists_already(path);
  const std::filesystem::path folder = std::filesystem::path(path).parent_path();
  if (!folder.empty() && !std::filesystem::is_directory(folder, fault)) {
    return cannot_write(path, "there is no folder \"" + folder.string() + "\"");
  }
  return std::nullopt;
}

}  // namespace keenfall::workbench
