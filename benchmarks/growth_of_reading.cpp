#include "benchmarks/benchmark.h"
#include "benchmarks/growth.h"
#include "benchmarks/long_table_file.h"
#include "benchmarks/results_table.h"
#include "benchmarks/table_reading.h"
#include "benchmarks/working_folder.h"

#include <fmt/format.h>

#include <vector>

namespace keenfall::benchmarks {

Outcome growth_of_reading() {
  const WorkingFolder folder;
  std::vector<Grown> steps;
  for (const int runs : {1250, 2500, 5000}) {
    const auto table = write_long_table(folder.path() / "long.csv", runs);
    if (!table) return table.error();
    const auto measured = measured_reading(*table);
    if (!measured) return measured.error();
    steps.push_back({.size = grouped(table->readings),
                     .cpu_s = measured->cpu_s,
                     .peak_memory_mb = measured->peak_memory_mb});
  }
  fmt::print("{}", growth_text("readings", steps));
  return {};
}

}  // namespace keenfall::benchmarks
