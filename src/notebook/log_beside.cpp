#include "notebook/log_beside.h"

#include <sys/stat.h>

namespace keenfall::notebook {

std::optional<std::string> log_beside(const std::string& path) {
  for (const char* ending : {"-wal", "-journal"}) {
    struct stat about {};
    if (stat((path + ending).c_str(), &about) == 0 && about.st_size > 0) return path + ending;
  }
  return std::nullopt;
}

}  // namespace keenfall::notebook
