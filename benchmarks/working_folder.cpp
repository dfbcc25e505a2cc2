#include "benchmarks/working_folder.h"

#include <cerrno>
#include <cstdlib>
#include <string>
#include <system_error>

namespace keenfall::benchmarks {

WorkingFolder::WorkingFolder() {
  std::string name = (std::filesystem::temp_directory_path() / "keenfall-bench-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) {
    throw std::filesystem::filesystem_error(
        "no temporary folder", name, std::error_code(errno, std::generic_category()));
  }
  path_ = name;
}

WorkingFolder::~WorkingFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(path_, ignored);
}

}  // namespace keenfall::benchmarks
