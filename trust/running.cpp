#include "trust/running.h"

#include <atomic>
#include <cstddef>
#include <mutex>

namespace keenfall::trust {

namespace {

struct BatchToRun {
  Running* run = nullptr;
  int batch = 0;
};

std::vector<BatchToRun> batches_to_run(std::span<Running* const> runs) {
  std::vector<BatchToRun> batches;
  for (Running* run : runs) {
    for (int batch = 0; batch < run->experiment.batches; ++batch) {
      if (!run->kept.has(batch)) batches.push_back({.run = run, .batch = batch});
    }
  }
  return batches;
}

}  // namespace

bool run_all(std::span<Running* const> runs, unsigned threads, const base::ProgressReport& report) {
  const std::vector<BatchToRun> batches = batches_to_run(runs);
  std::atomic<std::size_t> next = 0;
  std::atomic<bool> stopped = false;
  std::mutex keeping;
  std::size_t done = 0;
  const auto work = [&] {
    for (std::size_t i = next++; i < batches.size() && !stopped; i = next++) {
      Running& run = *batches[i].run;
      const Sums sums = run.experiment.measured(batches[i].batch);
      const std::scoped_lock lock(keeping);
      run.kept.keep(batches[i].batch, sums);
      ++done;
      const base::Progress progress{
          .fraction_done = static_cast<double>(done) / static_cast<double>(batches.size()),
          .stage = run.experiment.name};
      if (!report(progress)) stopped = true;
    }
  };
  base::threads(threads)(std::vector<base::Task>(threads, work));
  return !stopped || done == batches.size();
}

}  // namespace keenfall::trust
