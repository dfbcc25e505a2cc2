#include "base/plain_number.h"
#include "benchmarks/benchmark.h"
#include "benchmarks/gritty_edges.h"
#include "benchmarks/growth.h"
#include "benchmarks/in_turn.h"
#include "benchmarks/measured_child.h"
#include "benchmarks/results_table.h"

#include <fmt/format.h>

#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

namespace keenfall::benchmarks {

namespace {

constexpr double kShareOfTwoThreads = 0.6;  // 0.5 would be twice as fast

Findings cut_edges(const wear::ApexSimulation& simulation, int runs, const base::Executor& with) {
  const auto edges = wear::simulate(simulation, {.runs = runs}, with);
  if (!edges) throw std::runtime_error(base::in_words(edges.error()));
  return {{"edges", static_cast<double>(edges->size())}};
}

// 20 runs with their whole sections kept at more and more checkpoints.
Outcome growth_with_sections_kept() {
  std::vector<Grown> steps;
  for (const long sections : {50L, 100L, 200L}) {
    const auto measured = measured_work([sections] {
      constexpr int kRunsKept = 20;
      wear::ApexSimulation simulation = gritty_edges(sections);
      simulation.keep_sections = true;
      simulation.read_at_cuts.clear();
      for (long cut = 1; cut <= sections; ++cut) simulation.read_at_cuts.push_back(cut);
      return cut_edges(simulation, kRunsKept, base::one_thread());
    });
    if (!measured) return measured.error();
    steps.push_back({.size = fmt::format("20 x {}", sections),
                     .cpu_s = measured->cpu_s,
                     .peak_memory_mb = measured->peak_memory_mb});
  }
  fmt::print("{}", growth_text("sections kept", steps));
  fmt::print("{}",
             in_words({.what = "memory when the sections kept double, times",
                       .below = 2.1,
                       .measured = steps[2].peak_memory_mb / steps[1].peak_memory_mb}));
  return {};
}

Outcome growth_with_runs() {
  std::vector<Grown> steps;
  for (const int runs : {kEdges, 2 * kEdges, 4 * kEdges}) {
    const auto measured = measured_work(
        [runs] { return cut_edges(gritty_edges(kEdgeCuts), runs, base::one_thread()); });
    if (!measured) return measured.error();
    steps.push_back({.size = grouped(runs),
                     .cpu_s = measured->cpu_s,
                     .peak_memory_mb = measured->peak_memory_mb});
  }
  fmt::print("{}", growth_text("runs, no sections kept", steps));
  return {};
}

// Time on the wall with two threads as a share of that with one, in pairs; means something only
// where two cores are free.
Outcome gain_of_two_threads() {
  const auto with = [](unsigned threads) {
    return [threads](int /*round*/) {
      return measured_work(
          [threads] { return cut_edges(gritty_edges(kEdgeCuts), kEdges, base::threads(threads)); });
    };
  };
  const auto rounds = measured_in_turn({with(1), with(2)});
  if (!rounds) return rounds.error();
  const auto share_of_one = [&rounds](double Measured::*cost) {
    return median_ratio(
        rounds->at(1), rounds->at(0), [cost](const Measured& measured) { return measured.*cost; });
  };
  fmt::print("  two threads take {} of the processor time of one, median of {} pairs\n",
             base::with_figures(share_of_one(&Measured::cpu_s), 3),
             kRounds);
  fmt::print("{}",
             in_words({.what = "time on the wall with two threads, as a share of one's",
                       .below = kShareOfTwoThreads,
                       .measured = share_of_one(&Measured::wall_s)}));
  return {};
}

}  // namespace

Outcome growth_of_blunting() {
  if (auto problem = growth_with_runs()) return problem;
  if (auto problem = growth_with_sections_kept()) return problem;
  if (std::thread::hardware_concurrency() < 2) {
    fmt::print("  this machine has one core: the gain of a second thread is not measured\n");
    return {};
  }
  return gain_of_two_threads();
}

}  // namespace keenfall::benchmarks
