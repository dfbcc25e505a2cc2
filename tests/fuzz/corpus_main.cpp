// Runs every file of a corpus through the fuzz target it is linked with, or the files named: how
// the everyday tests see that what was once found stays mended.
#include "fuzz_target.h"

#include <algorithm>
#include <exception>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <vector>

namespace {

std::vector<std::filesystem::path> files_of(const std::filesystem::path& path) {
  if (!std::filesystem::is_directory(path)) return {path};
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(path)) files.push_back(entry.path());
  std::ranges::sort(files);
  return files;
}

// Its name goes first, so that it stands last where the process ends.
void run(const std::filesystem::path& path) {
  std::cout << path.string() << std::endl;
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("the file cannot be opened");
  const std::string bytes{std::istreambuf_iterator<char>(file), {}};
  (void)LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(bytes.data()), bytes.size());
}

}  // namespace

int main(int count, char** arguments) {
  std::size_t files_run = 0;
  try {
    for (int i = 1; i < count; ++i) {
      for (const auto& file : files_of(arguments[i])) {
        run(file);
        ++files_run;
      }
    }
  } catch (const std::exception& failure) {
    std::cerr << "the target threw: " << failure.what() << '\n';
    return 1;
  }
  std::cout << files_run << " files did no harm\n";
  return files_run > 0 ? 0 : 1;
}
