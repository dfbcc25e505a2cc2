#include "blunting/inference/fitted_simulation.h"

#include "numerics/summaries.h"

#include <utility>

namespace keenfall::blunting {

Fitted fitted(const trials::Trial& trial,
              const ModelSpec& spec,
              const base::Executor& execute,
              const SamplingOptions& options) {
  auto data = prepare(trial, {.kind = "thread_push", .thread = ""}, spec.errors);
  auto fit = fit_blunting(*data, spec, options, {3}, execute, base::unwatched());
  return {std::move(*data), std::move(*fit)};
}

numerics::Interval log_ratio_of(const BluntingFit& fit) {
  Draws ratio = fit.arms[0].log_half_keenness;
  for (std::size_t d = 0; d < ratio.size(); ++d) ratio[d] -= fit.arms[1].log_half_keenness[d];
  return numerics::interval_of(std::move(ratio));
}

}  // namespace keenfall::blunting
