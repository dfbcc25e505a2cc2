#include "numerics/nuts.h"

#include "base/require.h"
#include "numerics/nuts_tree.h"
#include "numerics/nuts_warmup.h"
#include "numerics/random.h"

#include <algorithm>
#include <atomic>
#include <cmath>

namespace keenfall::numerics {

namespace {

// Counts the iterations of all chains and passes the word to stop from the report to each of them.
class Watch {
 public:
  Watch(const base::ProgressReport& report, int iterations) : report_(report), total_(iterations) {}

  [[nodiscard]] bool tick() {
    const int done = ++done_;
    if (done % 20 == 0 && !stopped_) {
      const double fraction = static_cast<double>(done) / static_cast<double>(total_);
      if (!report_({.fraction_done = fraction, .stage = "fitting the blunting curves"})) {
        stopped_ = true;
      }
    }
    return !stopped_;
  }

  [[nodiscard]] bool stopped() const { return stopped_; }

 private:
  const base::ProgressReport& report_;
  int total_;
  std::atomic<int> done_{0};
  std::atomic<bool> stopped_{false};
};

// Returns the step size to sample with; leaves the tree at the end of warm-up with its metric set.
double warm_up(NutsTree& tree,
               const NutsOptions& options,
               std::size_t dimension,
               RandomStream& random,
               NutsChain& chain,
               Watch& watch) {
  StepSizeTuner tuner(options.target_acceptance);
  if (!options.rough_variances.empty()) tree.set_metric(options.rough_variances);
  tuner.restart(tree.reasonable_step_size(0.1, options.target_acceptance, random));
  RunningVariances variances(dimension, options.rough_variances);
  const std::vector<int> updates = metric_updates(options.warmup);
  const int first = first_metric_iteration(options.warmup);
  for (int i = 0; i < options.warmup; ++i) {
    const Transition transition = tree.step(tuner.current(), random);
    chain.gradient_evaluations += transition.gradient_evaluations;
    tuner.learn(transition.acceptance);
    if (i >= first && i <= updates.back()) variances.add(tree.here().position);
    if (std::ranges::find(updates, i) != updates.end()) {
      tree.set_metric(variances.shrunk());
      variances.clear();
      tuner.restart(tree.reasonable_step_size(tuner.averaged(), options.target_acceptance, random));
    }
    if (!watch.tick()) break;
  }
  return tuner.averaged();
}

void run_chain(NutsChain& chain,
               LogDensity density,
               const std::vector<double>& start,
               const NutsOptions& options,
               RandomStream random,
               Watch& watch) {
  NutsTree tree(std::move(density), start.size(), options.max_tree_depth);
  tree.move_to(start);
  const double step_size = warm_up(tree, options, start.size(), random, chain, watch);
  chain.draws.reserve(static_cast<std::size_t>(options.draws) * start.size());
  for (int i = 0; i < options.draws && !watch.stopped(); ++i) {
    const Transition transition = tree.step(step_size, random);
    chain.gradient_evaluations += transition.gradient_evaluations;
    if (transition.diverged) ++chain.divergences;
    const auto& position = tree.here().position;
    chain.draws.insert(chain.draws.end(), position.begin(), position.end());
    if (!watch.tick()) break;
  }
}

}  // namespace

std::vector<std::vector<double>> NutsDraws::of(std::size_t coordinate) const {
  base::require(coordinate < dimension, "a coordinate must be one of the sampled ones");
  std::vector<std::vector<double>> values;
  for (const NutsChain& chain : chains) {
    std::vector<double> column;
    column.reserve(chain.draws.size() / dimension);
    for (std::size_t i = coordinate; i < chain.draws.size(); i += dimension) {
      column.push_back(chain.draws[i]);
    }
    values.push_back(std::move(column));
  }
  return values;
}

NutsDraws sample_nuts(const LogDensityMaker& make_density,
                      std::span<const std::vector<double>> starts,
                      const NutsOptions& options,
                      base::Seed seed,
                      const base::Executor& execute,
                      const base::ProgressReport& report) {
  base::require(!starts.empty() && !starts.front().empty(), "sampling needs a starting point");
  base::require(
      options.rough_variances.empty() || options.rough_variances.size() == starts.front().size(),
      "a rough variance for every coordinate, or none");
  base::require(options.warmup >= 100, "sampling needs at least 100 iterations of warm-up");
  NutsDraws draws{.dimension = starts.front().size()};
  draws.chains.resize(starts.size());
  Watch watch(report, (options.warmup + options.draws) * static_cast<int>(starts.size()));
  std::vector<base::Task> tasks;
  for (std::size_t c = 0; c < starts.size(); ++c) {
    tasks.push_back([&, c] {
      run_chain(draws.chains[c], make_density(), starts[c], options, RandomStream(seed, c), watch);
    });
  }
  execute(tasks);
  draws.stopped = watch.stopped();
  return draws;
}

}  // namespace keenfall::numerics
