#include "blunting/inference/full_fit.h"

#include "blunting/inference/blunting_density.h"
#include "numerics/summaries.h"

namespace keenfall::blunting {

namespace {

BluntingFit with_room(const BluntingData& data, const BluntingDensity& density, std::size_t total) {
  BluntingFit fit{.parts = density.parts()};
  fit.arms.resize(data.arms.size());
  fit.runs.resize(data.runs.size());
  fit.run_scatter.resize(density.layout().scatters);
  fit.start_scatter.resize(density.layout().scatters);
  for (Draws& scatter : fit.run_scatter) scatter.reserve(total);
  return fit;
}

// The mean specimen effect of the runs of an arm: what the blades that were cut with add to the
// steel.
double specimen_mean(const BluntingData& data, const ParameterValues& values, std::size_t arm) {
  if (values.specimen_effect.empty()) return 0;
  double sum = 0;
  double count = 0;
  std::vector<bool> seen(values.specimen_effect.size());
  for (const RunData& run : data.runs) {
    if (run.arm != arm || !run.specimen || seen[*run.specimen]) continue;
    seen[*run.specimen] = true;
    sum += values.specimen_effect[*run.specimen];
    ++count;
  }
  return count > 0 ? sum / count : 0;
}

void keep(const ParameterValues& values, const BluntingData& data, BluntingFit& fit) {
  for (std::size_t a = 0; a < fit.arms.size(); ++a) {
    fit.arms[a].log_start.push_back(values.start_mean[a]);
    fit.arms[a].log_half_keenness_steel.push_back(values.half_mean[a]);
    fit.arms[a].log_half_keenness.push_back(values.half_mean[a] + specimen_mean(data, values, a));
    fit.arms[a].shape.push_back(values.shape[a]);
  }
  for (std::size_t r = 0; r < fit.runs.size(); ++r) {
    fit.runs[r].log_start.push_back(values.run_start[r]);
    fit.runs[r].log_half_keenness.push_back(values.run_half[r]);
  }
  for (std::size_t s = 0; s < fit.run_scatter.size(); ++s) {
    fit.start_scatter[s].push_back(values.start_scatter[s]);
    fit.run_scatter[s].push_back(values.run_scatter[s]);
  }
  fit.start_effect.push_back(values.start_effect);
  fit.order_drift.push_back(values.order_drift);
  fit.reading_scatter.push_back(values.reading_scatter);
  fit.checkpoint_scatter.push_back(values.checkpoint_scatter);
}

Watched watched_in(const BluntingFit& fit) {
  Watched watched{.main = {&fit.reading_scatter, &fit.checkpoint_scatter}};
  if (fit.parts.start_effect) watched.main.push_back(&fit.start_effect);
  if (fit.parts.order_drift) watched.main.push_back(&fit.order_drift);
  for (const Draws& scatter : fit.start_scatter) watched.main.push_back(&scatter);
  for (const Draws& scatter : fit.run_scatter) watched.main.push_back(&scatter);
  for (const ArmDraws& arm : fit.arms) {
    watched.main.insert(
        watched.main.end(),
        {&arm.log_start, &arm.log_half_keenness, &arm.log_half_keenness_steel, &arm.shape});
  }
  for (const RunDraws& run : fit.runs) {
    watched.runs.insert(watched.runs.end(), {&run.log_start, &run.log_half_keenness});
  }
  return watched;
}

base::Result<BluntingFit> attempt(const BluntingData& data,
                                  const ModelSpec& spec,
                                  const SamplingOptions& options,
                                  base::Seed seed,
                                  const base::Executor& execute,
                                  const base::ProgressReport& report) {
  const BluntingDensity density(data, spec);
  const auto draws = sampled(density, "the curves", options, seed, execute, report);
  if (!draws) return base::failed(draws.error());

  const auto per_chain = static_cast<std::size_t>(options.draws);
  BluntingFit fit = with_room(data, density, per_chain * draws->chains.size());
  fit.chains = draws->chains.size();
  fit.draws_per_chain = per_chain;
  int divergences = 0;
  for (const numerics::NutsChain& chain : draws->chains) {
    divergences += chain.divergences;
    for (std::size_t d = 0; d < per_chain; ++d) {
      const std::span<const double> all(chain.draws);
      keep(density.values_at(all.subspan(d * draws->dimension, draws->dimension)), data, fit);
    }
  }
  for (RunDraws& run : fit.runs) run.log_start_median = numerics::median_of(run.log_start);
  fit.diagnostics = diagnostics_of(watched_in(fit), fit.chains, divergences, execute);
  return fit;
}

}  // namespace

SamplingOptions sampling_for(const BluntingData& data) {
  constexpr std::size_t kManyRuns = 300;
  if (data.runs.size() <= kManyRuns) return {};
  return {.warmup = 350, .draws = 1000, .target_acceptance = 0.7};
}

base::Result<BluntingFit> fit_blunting(const BluntingData& data,
                                       const ModelSpec& spec,
                                       const SamplingOptions& options,
                                       base::Seed seed,
                                       const base::Executor& execute,
                                       const base::ProgressReport& report) {
  return first_or_careful(options, [&](const SamplingOptions& how) {
    return attempt(data, spec, how, seed, execute, report);
  });
}

}  // namespace keenfall::blunting
