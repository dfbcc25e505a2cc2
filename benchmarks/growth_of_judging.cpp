#include "benchmarks/benchmark.h"
#include "benchmarks/growth.h"
#include "benchmarks/judged.h"
#include "benchmarks/made_trial.h"
#include "benchmarks/measured_child.h"
#include "benchmarks/results_table.h"

#include <fmt/format.h>

#include <vector>

namespace keenfall::benchmarks {

Outcome growth_of_judging() {
  std::vector<Grown> steps;
  for (const int checkpoints : {8, 16, 32}) {
    const auto measured = measured_work([checkpoints] {
      const trials::Trial trial =
          made_trial({.blades = 10, .media = 2, .runs = 10, .checkpoints = checkpoints});
      (void)judged(trial, shown_progress());
      return Findings{{"readings", readings_in(trial)}};
    });
    if (!measured) return measured.error();
    steps.push_back({.size = grouped(measured->findings.at("readings")),
                     .cpu_s = measured->cpu_s,
                     .peak_memory_mb = measured->peak_memory_mb});
  }
  fmt::print("{}", growth_text("readings", steps));
  return {};
}

}  // namespace keenfall::benchmarks
