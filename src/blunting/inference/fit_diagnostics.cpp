#include "blunting/inference/fit_diagnostics.h"

#include "base/plain_number.h"
#include "base/require.h"
#include "numerics/chain_diagnostics.h"

#include <algorithm>

namespace keenfall::blunting {

namespace {

constexpr double kLargestRHat = 1.01;
constexpr double kSmallestEffectiveSize = 400;
constexpr double kLargestDivergentFraction = 0.001;

std::vector<std::vector<double>> by_chain(const Draws& draws, std::size_t chains) {
  const auto length = static_cast<std::ptrdiff_t>(draws.size() / chains);
  std::vector<std::vector<double>> parts;
  for (std::size_t c = 0; c < chains; ++c) {
    const auto first = draws.begin() + static_cast<std::ptrdiff_t>(c) * length;
    parts.push_back({first, first + length});
  }
  return parts;
}

void judge_convergence(FitDiagnostics& found, double total_draws) {
  if (!(found.r_hat_max <= kLargestRHat)) {
    found.reasons.push_back("the chains disagree (R-hat " +
                            base::with_decimals(found.r_hat_max, 3) + ", wanted at most 1.01)");
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

}  // namespace

FitDiagnostics diagnostics_of(std::span<const Draws* const> watched,
                              std::size_t chains,
                              int divergences,
                              const base::Executor& execute) {
  base::require(!watched.empty(), "a fit has at least one quantity to watch");
  std::vector<numerics::ChainDiagnostics> each(watched.size());
  constexpr std::size_t kTasks = 8;
  std::vector<base::Task> tasks;
  for (std::size_t t = 0; t < kTasks; ++t) {
    tasks.push_back([&, t] {
      for (std::size_t i = t; i < watched.size(); i += kTasks) {
        each[i] = numerics::diagnose(by_chain(*watched[i], chains));
      }
    });
  }
  execute(tasks);
  FitDiagnostics found{.r_hat_max = each[0].r_hat,
                       .ess_bulk_min = each[0].ess_bulk,
                       .ess_tail_min = each[0].ess_tail,
                       .divergences = divergences};
  for (const numerics::ChainDiagnostics& one : each) {
    found.r_hat_max = std::max(found.r_hat_max, one.r_hat);
    found.ess_bulk_min = std::min(found.ess_bulk_min, one.ess_bulk);
    found.ess_tail_min = std::min(found.ess_tail_min, one.ess_tail);
  }
  judge_convergence(found, static_cast<double>(watched.front()->size()));
  return found;
}

}  // namespace keenfall::blunting
