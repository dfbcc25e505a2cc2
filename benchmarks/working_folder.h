// A new folder for what the benchmarks write, among the system's temporary files; gone at the end.
#pragma once

#include <filesystem>

namespace keenfall::benchmarks {

class WorkingFolder {
 public:
  WorkingFolder();  // throws std::filesystem::filesystem_error where none can be made
  ~WorkingFolder();
  WorkingFolder(const WorkingFolder&) = delete;
  WorkingFolder& operator=(const WorkingFolder&) = delete;
  WorkingFolder(WorkingFolder&&) = delete;
  WorkingFolder& operator=(WorkingFolder&&) = delete;

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace keenfall::benchmarks
