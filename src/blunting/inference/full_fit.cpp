#include "blunting/inference/full_fit.h"

#include "base/plain_number.h"
#include "blunting/inference/blunting_density.h"
#include "numerics/chain_diagnostics.h"
#include "numerics/nuts.h"

#include <algorithm>
#include <cmath>
#include <memory>

namespace keenfall::blunting {

namespace {

constexpr double kLargestRHat = 1.01;
constexpr double kSmallestEffectiveSize = 400;
constexpr double kLargestDivergentFraction = 0.001;

BluntingFit with_room(const BluntingData& data, const BluntingDensity& density, std::size_t total) {
  BluntingFit fit{.parts = density.parts()};
  fit.arms.resize(data.arms.size());
  fit.runs.resize(data.runs.size());
  fit.run_scatter.resize(density.layout().scatters);
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
    fit.run_scatter[s].push_back(values.run_scatter[s]);
  }
  fit.start_scatter.push_back(values.start_scatter);
  fit.reading_scatter.push_back(values.reading_scatter);
  fit.checkpoint_scatter.push_back(values.checkpoint_scatter);
}

std::vector<const Draws*> monitored(const BluntingFit& fit) {
  std::vector<const Draws*> all{&fit.start_scatter, &fit.reading_scatter, &fit.checkpoint_scatter};
  for (const Draws& scatter : fit.run_scatter) all.push_back(&scatter);
  for (const ArmDraws& arm : fit.arms) {
    all.insert(all.end(),
               {&arm.log_start, &arm.log_half_keenness, &arm.log_half_keenness_steel, &arm.shape});
  }
  for (const RunDraws& run : fit.runs) {
    all.insert(all.end(), {&run.log_start, &run.log_half_keenness});
  }
  return all;
}

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

FitDiagnostics diagnostics_of(const BluntingFit& fit,
                              int divergences,
                              const base::Executor& execute) {
  const std::vector<const Draws*> watched = monitored(fit);
  std::vector<numerics::ChainDiagnostics> each(watched.size());
  constexpr std::size_t kTasks = 8;
  std::vector<base::Task> tasks;
  for (std::size_t t = 0; t < kTasks; ++t) {
    tasks.push_back([&, t] {
      for (std::size_t i = t; i < watched.size(); i += kTasks) {
        each[i] = numerics::diagnose(by_chain(*watched[i], fit.chains));
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
  judge_convergence(found, static_cast<double>(fit.chains * fit.draws_per_chain));
  return found;
}

base::Result<BluntingFit> attempt(const BluntingData& data,
                                  const ModelSpec& spec,
                                  const SamplingOptions& options,
                                  base::Seed seed,
                                  const base::Executor& execute,
                                  const base::ProgressReport& report) {
  const BluntingDensity density(data, spec);
  std::vector<std::vector<double>> starts;
  for (int c = 0; c < options.chains; ++c) {
    starts.push_back(density.start_for(seed, static_cast<std::uint64_t>(c)));
  }
  const auto make_density = [&density]() -> numerics::LogDensity {
    const auto own = std::make_shared<BluntingDensity>(density);
    return [own](std::span<const double> q, std::span<double> gradient) {
      return (*own)(q, gradient);
    };
  };
  const numerics::NutsDraws draws =
      numerics::sample_nuts(make_density,
                            starts,
                            {.warmup = options.warmup,
                             .draws = options.draws,
                             .target_acceptance = options.target_acceptance},
                            seed,
                            execute,
                            report);
  if (draws.stopped) {
    return base::failed({.kind = base::ProblemKind::interrupted,
                         .sentence = "Stopped before the curves were fitted; nothing was kept."});
  }

  const auto per_chain = static_cast<std::size_t>(options.draws);
  BluntingFit fit = with_room(data, density, per_chain * draws.chains.size());
  fit.chains = draws.chains.size();
  fit.draws_per_chain = per_chain;
  int divergences = 0;
  for (const numerics::NutsChain& chain : draws.chains) {
    divergences += chain.divergences;
    for (std::size_t d = 0; d < per_chain; ++d) {
      const std::span<const double> all(chain.draws);
      keep(density.values_at(all.subspan(d * draws.dimension, draws.dimension)), data, fit);
    }
  }
  fit.diagnostics = diagnostics_of(fit, divergences, execute);
  return fit;
}

}  // namespace

base::Result<BluntingFit> fit_blunting(const BluntingData& data,
                                       const ModelSpec& spec,
                                       const SamplingOptions& options,
                                       base::Seed seed,
                                       const base::Executor& execute,
                                       const base::ProgressReport& report) {
  base::Result<BluntingFit> fit = attempt(data, spec, options, seed, execute, report);
  if (!fit || fit->diagnostics.usable) return fit;
  SamplingOptions careful = options;
  careful.warmup *= 2;
  careful.draws *= 2;
  careful.target_acceptance = 0.98;
  return attempt(data, spec, careful, seed, execute, report);
}

}  // namespace keenfall::blunting
