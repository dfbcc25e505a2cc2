#include "benchmarks/judging_cost.h"

#include "base/plain_number.h"
#include "benchmarks/results_table.h"

namespace keenfall::benchmarks {

namespace {

constexpr double kMs = 1000;  // ms in a second
constexpr double kWhole = 100;

std::string milliseconds(double seconds) {
  const double ms = kMs * seconds;
  return ms < kWhole ? base::with_figures(ms, 2) : grouped(ms);
}

}  // namespace

std::string costs_text(const std::vector<JudgingCost>& ours,
                       const std::optional<JudgingCost>& peer) {
  ResultsTable table{.heads = {"engine", "CPU, ms", "peak memory, MB"}};
  if (peer) table.heads.emplace_back("CPU / the peer's");
  std::vector<JudgingCost> all = ours;
  if (peer) all.push_back(*peer);
  for (const JudgingCost& cost : all) {
    table.rows.push_back({cost.name,
                          milliseconds(cost.cpu_s),
                          cost.peak_memory_mb ? grouped(*cost.peak_memory_mb) : "-"});
    if (peer) table.rows.back().push_back(base::with_figures(cost.cpu_s / peer->cpu_s, 2));
  }
  return in_columns(table);
}

}  // namespace keenfall::benchmarks
