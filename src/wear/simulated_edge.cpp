#include "wear/simulated_edge.h"

#include "wear/edge_life.h"
#include "wear/refusals.h"

#include <atomic>
#include <cstddef>

namespace keenfall::wear {

base::Result<std::vector<SimulatedEdge>> simulate(const ApexSimulation& simulation,
                                                  const Ensemble& ensemble,
                                                  const base::Executor& executor,
                                                  const base::ProgressReport& progress) {
  const auto problems = problems_of(simulation, ensemble);
  if (!problems.empty()) return base::failed(problems.front());
  const std::vector<Stretch> stretches = stretches_of(simulation.schedule);
  const auto runs = static_cast<std::size_t>(ensemble.runs);
  std::vector<SimulatedEdge> edges(runs);
  std::atomic<std::size_t> done = 0;
  std::atomic<bool> stopped = false;
  std::vector<base::Task> tasks;
  tasks.reserve(runs);
  for (std::size_t run = 0; run < runs; ++run) {
    tasks.push_back([&, run] {
      if (stopped) return;
      edges[run] = lived(simulation, stretches, {.seed = ensemble.seed, .run = run});
      const double fraction = static_cast<double>(++done) / static_cast<double>(runs);
      if (!progress({.fraction_done = fraction, .stage = "cutting simulated edges"})) {
        stopped = true;
      }
    });
  }
  executor(tasks);
  if (stopped && done < runs) {
    return base::failed({.kind = base::ProblemKind::interrupted,
                         .sentence = "the simulation was stopped before all edges were cut"});
  }
  return edges;
}

}  // namespace keenfall::wear
