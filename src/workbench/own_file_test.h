// A file of a test's own, gone afterwards.
#pragma once

#include <filesystem>
#include <fstream>
#include <string>

#include <unistd.h>

namespace keenfall::testing_files {

class OwnFile {
 public:
  explicit OwnFile(const std::string& text)
      : path_(std::filesystem::temp_directory_path() /
              ("keenfall-constants-" + std::to_string(getpid()) + ".csv")) {
    std::ofstream(path_) << text;
  }
  ~OwnFile() { std::filesystem::remove(path_); }
  OwnFile(const OwnFile&) = delete;
  OwnFile& operator=(const OwnFile&) = delete;
  OwnFile(OwnFile&&) = delete;
  OwnFile& operator=(OwnFile&&) = delete;

  [[nodiscard]] std::string path() const { return path_.string(); }

 private:
  std::filesystem::path path_;
};

}  // namespace keenfall::testing_files
