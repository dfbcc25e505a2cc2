#include "benchmarks/growth.h"

#include "base/plain_number.h"
#include "benchmarks/results_table.h"

#include <algorithm>
#include <cstddef>

namespace keenfall::benchmarks {

namespace {

constexpr double kBetweenLinearAndQuadratic = 2.83;  // sqrt(2 * 4)

}  // namespace

std::string growth_text(const std::string& head, const std::vector<Grown>& steps) {
  ResultsTable table{.heads = {head, "CPU, s", "peak memory, MB", "times the CPU of half as many"}};
  double largest = 0;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    std::string times = "-";
    if (i > 0) {
      const double growth = steps[i].cpu_s / steps[i - 1].cpu_s;
      largest = std::max(largest, growth);
      times = base::with_figures(growth, 3);
    }
    table.rows.push_back({steps[i].size,
                          base::with_decimals(steps[i].cpu_s, 2),
                          grouped(steps[i].peak_memory_mb),
                          times});
  }
  return in_columns(table) + in_words({.what = "growth when the work doubles, times",
                                       .below = kBetweenLinearAndQuadratic,
                                       .measured = largest});
}

}  // namespace keenfall::benchmarks
