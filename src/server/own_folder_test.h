// For tests: a folder that is gone with everything in it when it goes out of scope.
#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <string>

#include <unistd.h>

namespace keenfall::server::testing {

class OwnFolder {
 public:
  explicit OwnFolder(const std::string& name)
      : path_(::testing::TempDir() + "keenfall_server_" + std::to_string(getpid()) + "_" + name) {
    std::filesystem::remove_all(path_);
    std::filesystem::create_directory(path_);
  }
  ~OwnFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  OwnFolder(const OwnFolder&) = delete;
  OwnFolder& operator=(const OwnFolder&) = delete;
  OwnFolder(OwnFolder&&) = delete;
  OwnFolder& operator=(OwnFolder&&) = delete;

  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] std::string file(const std::string& name) const { return path_ + "/" + name; }

 private:
  std::string path_;
};

}  // namespace keenfall::server::testing
