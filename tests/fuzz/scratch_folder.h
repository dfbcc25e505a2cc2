// A folder for what a target writes: in memory where that is to be had; gone when the process
// ends as it should.
#pragma once

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <string_view>

namespace keenfall::fuzz {

[[nodiscard]] inline std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

class ScratchFolder {
 public:
  ScratchFolder() {
    const std::filesystem::path in_memory = "/dev/shm";
    const bool is_there = std::filesystem::is_directory(in_memory);
    const auto place = is_there ? in_memory : std::filesystem::temp_directory_path();
    std::string name = place / "keenfall-fuzz-XXXXXX";
    if (mkdtemp(name.data()) == nullptr) throw std::runtime_error("no folder can be made");
    path_ = name;
  }
  ~ScratchFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;
  ScratchFolder(ScratchFolder&&) = delete;
  ScratchFolder& operator=(ScratchFolder&&) = delete;

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

  void clear() const {
    for (const auto& entry : std::filesystem::directory_iterator(path_)) {
      std::filesystem::remove_all(entry.path());
    }
  }

  // Its path.
  [[nodiscard]] std::string file(const char* name, std::string_view bytes) const {
    std::string path = path_ / name;
    std::ofstream file(path, std::ios::binary);
    file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    return path;
  }

 private:
  std::filesystem::path path_;
};

}  // namespace keenfall::fuzz
