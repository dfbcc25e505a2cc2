#include "base/plain_number.h"
#include "benchmarks/benchmark.h"
#include "benchmarks/long_table_file.h"
#include "benchmarks/peers.h"
#include "benchmarks/peers/orcus_reader.h"
#include "benchmarks/results_table.h"
#include "benchmarks/table_reading.h"
#include "benchmarks/working_folder.h"

#include <fmt/format.h>

#include <string>
#include <vector>

namespace keenfall::benchmarks {

namespace {

constexpr int kRuns = 5000;
constexpr double kReadingSeconds = 30;
constexpr double kReadingMegabytes = 1000;

std::vector<std::string> row_of(const std::string& name,
                                const Measured& measured,
                                const Measured& ours) {
  return {name,
          base::with_decimals(measured.cpu_s, 2),
          base::with_decimals(measured.wall_s, 2),
          grouped(measured.peak_memory_mb),
          grouped(measured.findings.at("readings") / measured.cpu_s),
          base::with_figures(ours.cpu_s / measured.cpu_s, 2),
          base::with_figures(ours.peak_memory_mb / measured.peak_memory_mb, 2)};
}

}  // namespace

Outcome reading_a_table() {
  const WorkingFolder folder;
  const auto table = write_long_table(folder.path() / "long.csv", kRuns);
  if (!table) return table.error();
  fmt::print("  {} readings in {} runs, {} MB\n",
             grouped(table->readings),
             grouped(table->runs),
             grouped(table->bytes / 1e6));
  const std::string path = table->path.string();
  const auto ours = measured_reading(*table);
  if (!ours) return ours.error();
  const auto orcus = measured_work([&path] { return read_with_orcus(path); });
  if (!orcus) return orcus.error();
  const auto python =
      measured_peer({.interpreter = "python3", .file = "read_csv.py", .words = {path}});
  if (python && !*python) return python->error();

  ResultsTable results{
      .heads = {"reader",
                "CPU, s",
                "wall, s",
                "peak memory, MB",
                "readings per CPU-s",
                "Keenfall's CPU / its",
                "Keenfall's memory / its"},
      .rows = {row_of("Keenfall", *ours, *ours), row_of("liborcus, csv parser", *orcus, *ours)}};
  if (python) results.rows.push_back(row_of("Python, csv module", **python, *ours));
  fmt::print("{}", in_columns(results));
  fmt::print("{}", in_words({.what = "CPU, s", .below = kReadingSeconds, .measured = ours->cpu_s}));
  fmt::print("{}",
             in_words({.what = "peak memory, MB",
                       .below = kReadingMegabytes,
                       .measured = ours->peak_memory_mb}));
  return {};
}

}  // namespace keenfall::benchmarks
