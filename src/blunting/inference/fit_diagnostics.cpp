#include "blunting/inference/fit_diagnostics.h"

#include "base/plain_number.h"
#include "base/require.h"
#include "numerics/chain_diagnostics.h"

#include <algorithm>

namespace keenfall::blunting {

namespace {

constexpr double kLargestRHat = 1.01;
constexpr double kLargestRHatOfManyRuns = 1.05;
constexpr std::size_t kManyRunQuantities = 600;
constexpr double kSmallestEffectiveSize = 400;
constexpr double kLargestDivergentFraction = 0.001;

void judge_convergence(FitDiagnostics& found, double r_hat_of_many_runs, double total_draws) {
  if (!(found.r_hat_max <= kLargestRHat)) {
    found.reasons.push_back("the chains disagree (R-hat " +
                            base::with_decimals(found.r_hat_max, 3) + ", wanted at most 1.01)");
  }
  if (!(r_hat_of_many_runs <= kLargestRHatOfManyRuns)) {
    found.reasons.push_back("the chains disagree on single runs (R-hat " +
                            base::with_decimals(r_hat_of_many_runs, 3) + ", wanted at most 1.05)");
  }
  if (!(std::min(found.ess_bulk_min, found.ess_tail_min) >= kSmallestEffectiveSize)) {
    found.reasons.push_back(
        "too few independent draws (worth " +
        base::with_decimals(std::min(found.ess_bulk_min, found.ess_tail_min), 0) +
        ", wanted at least 400)");
  }
  if (!(found.divergences < kLargestDivergentFraction * total_draws)) {
    found.reasons.push_back("the sampler diverged " + std::to_string(found.divergences) +
                            " times in " + base::with_decimals(total_draws, 0) +
                            " draws (wanted under 0.1 %)");
  }
  found.usable = found.reasons.empty();
}

std::vector<numerics::ChainDiagnostics> diagnose_each(const std::vector<const Draws*>& all,
                                                      std::size_t chains,
                                                      const base::Executor& execute) {
  const numerics::ChainDiagnoser diagnoser(
      {.chains = chains, .length = all.front()->size() / chains});
  std::vector<numerics::ChainDiagnostics> each(all.size());
  constexpr std::size_t kTasks = 8;
  std::vector<base::Task> tasks;
  for (std::size_t t = 0; t < kTasks; ++t) {
    tasks.push_back([&, t] {
      for (std::size_t i = t; i < all.size(); i += kTasks) {
        each[i] = diagnoser.diagnose(*all[i]);
      }
    });
  }
  execute(tasks);
  return each;
}

}  // namespace

FitDiagnostics diagnostics_of(const Watched& watched,
                              std::size_t chains,
                              int divergences,
                              const base::Executor& execute) {
  base::require(!watched.main.empty(), "a fit has at least one quantity to watch");
  std::vector<const Draws*> all = watched.main;
  all.insert(all.end(), watched.runs.begin(), watched.runs.end());
  const std::vector<numerics::ChainDiagnostics> each = diagnose_each(all, chains, execute);
  FitDiagnostics found{.ess_bulk_min = each[0].ess_bulk,
                       .ess_tail_min = each[0].ess_tail,
                       .divergences = divergences};
  const bool many_runs = watched.runs.size() > kManyRunQuantities;
  double of_runs = 1;
  for (std::size_t i = 0; i < each.size(); ++i) {
    double& largest = many_runs && i >= watched.main.size() ? of_runs : found.r_hat_max;
    largest = std::max(largest, each[i].r_hat);
    found.ess_bulk_min = std::min(found.ess_bulk_min, each[i].ess_bulk);
    found.ess_tail_min = std::min(found.ess_tail_min, each[i].ess_tail);
  }
  judge_convergence(found, of_runs, static_cast<double>(watched.main.front()->size()));
  return found;
}

}  // namespace keenfall::blunting
