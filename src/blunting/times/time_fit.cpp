#include "blunting/times/time_fit.h"

#include "blunting/times/time_density.h"
#include "numerics/nuts.h"

#include <set>
#include <span>

namespace keenfall::blunting {

namespace {

// The mean effect of the specimens an arm was cut with.
double mean_effect_of_specimens(const TimeData& data, const TimeValues& values, std::size_t arm) {
  std::set<std::size_t> pieces;
  for (const GroupsOfRun& run : data.groups.runs) {
    if (run.arm == arm && run.specimen) pieces.insert(*run.specimen);
  }
  double sum = 0;
  for (const std::size_t piece : pieces) sum += values.specimen[piece];
  return pieces.empty() ? 0 : sum / static_cast<double>(pieces.size());
}

void keep_draw(const TimeValues& values, const TimeData& data, TimeFit& fit) {
  for (std::size_t a = 0; a < fit.arms.size(); ++a) {
    fit.arms[a].log_cuts_steel.push_back(values.arm[a]);
    fit.arms[a].log_cuts.push_back(values.arm[a] + mean_effect_of_specimens(data, values, a));
  }
  for (std::size_t m = 0; m < fit.run_scatter.size(); ++m) {
    fit.run_scatter[m].push_back(values.run_scatter[m]);
  }
}

base::Result<TimeFit> attempt_times(const TimeData& data,
                                    const SamplingOptions& options,
                                    base::Seed seed,
                                    const base::Executor& execute,
                                    const base::ProgressReport& report) {
  const TimeDensity density(data);
  const auto draws = sampled(density, "the times", options, seed, execute, report);
  if (!draws) return base::failed(draws.error());
  TimeFit fit{.chains = draws->chains.size(),
              .draws_per_chain = static_cast<std::size_t>(options.draws)};
  fit.arms.resize(data.groups.arms.size());
  fit.run_scatter.resize(data.groups.media.size());
  int divergences = 0;
  for (const numerics::NutsChain& chain : draws->chains) {
    divergences += chain.divergences;
    const std::span<const double> all(chain.draws);
    for (std::size_t d = 0; d < fit.draws_per_chain; ++d) {
      keep_draw(density.values_at(all.subspan(d * draws->dimension, draws->dimension)), data, fit);
    }
  }
  Watched watched;
  for (const ArmTimes& arm : fit.arms) {
    watched.main.insert(watched.main.end(), {&arm.log_cuts, &arm.log_cuts_steel});
  }
  for (const Draws& scatter : fit.run_scatter) watched.main.push_back(&scatter);
  fit.diagnostics = diagnostics_of(watched, fit.chains, divergences, execute);
  return fit;
}

}  // namespace

base::Result<TimeFit> fit_times(const TimeData& data,
                                const SamplingOptions& options,
                                base::Seed seed,
                                const base::Executor& execute,
                                const base::ProgressReport& report) {
  return first_or_careful(options, [&](const SamplingOptions& how) {
    return attempt_times(data, how, seed, execute, report);
  });
}

}  // namespace keenfall::blunting
