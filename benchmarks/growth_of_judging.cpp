#include "benchmarks/benchmark.h"
#include "benchmarks/growth.h"
#include "benchmarks/judged.h"
#include "benchmarks/made_trial.h"
#include "benchmarks/measured_child.h"
#include "benchmarks/results_table.h"

#include <fmt/format.h>

#include <string>
#include <vector>

namespace keenfall::benchmarks {

namespace {

// Findings: what a trial of such a size has of everything that may grow.
base::Result<Measured> judging_of(const TrialSize& size) {
  return measured_work([&size] {
    const trials::Trial trial = made_trial(size);
    (void)judged(trial, shown_progress());
    return Findings{{"readings", readings_in(trial)},
                    {"runs", static_cast<double>(trial.runs.size())},
                    {"arms", static_cast<double>(size.blades * size.media)}};
  });
}

// Each size has twice as much of one thing as the one before.
Outcome growth_in(const std::string& thing,
                  const std::string& head,
                  const std::vector<TrialSize>& sizes) {
  std::vector<Grown> steps;
  for (const TrialSize& size : sizes) {
    const auto measured = judging_of(size);
    if (!measured) return measured.error();
    steps.push_back({.size = grouped(measured->findings.at(thing)),
                     .cpu_s = measured->cpu_s,
                     .peak_memory_mb = measured->peak_memory_mb});
  }
  fmt::print("{}", growth_text(head, steps));
  return {};
}

}  // namespace

// Beyond 300 runs the sampler keeps fewer draws; with four sizes there is a doubling on either
// side.
Outcome growth_of_judging() {
  const TrialSize usual{.blades = 10, .media = 2, .runs = 10};
  std::vector<TrialSize> readings;
  std::vector<TrialSize> runs;
  std::vector<TrialSize> arms;
  for (const int times : {1, 2, 4, 8}) {
    if (times <= 4) {
      readings.push_back(usual);
      readings.back().checkpoints *= times;
    }
    runs.push_back(usual);
    runs.back().runs = 5 * times;
    arms.push_back(usual);
    arms.back().blades = 5 * times;
  }
  if (auto problem = growth_in("readings", "readings, 200 runs in 20 arms", readings)) {
    return problem;
  }
  if (auto problem = growth_in("runs", "runs, in 20 arms", runs)) return problem;
  return growth_in("arms", "arms, 10 runs in each", arms);
}

}  // namespace keenfall::benchmarks
