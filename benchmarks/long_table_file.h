// A long table as people keep it, of any length, written to a file: fourteen columns; some readings
// struck with a reason, some doubtful in either way, some cells in quotes with a comma, a quote or
// both inside.
#pragma once

#include "base/result.h"

#include <filesystem>

namespace keenfall::benchmarks {

struct TableFile {
  std::filesystem::path path;
  int runs = 0;
  int readings = 0;
  int struck = 0;
  int doubtful = 0;
  double bytes = 0;
};

inline constexpr int kReadingsOfRun = 200;  // 20 checkpoints, 10 repeats

// The same bytes on every call. Fails where the file cannot be written.
[[nodiscard]] base::Result<TableFile> write_long_table(const std::filesystem::path& path, int runs);

}  // namespace keenfall::benchmarks
