// Draws from the density of any model of runs, and a second, more careful attempt where the first
// is not fit for use.
//
// A density has start_for(seed, chain), rough_variances() and operator()(q, gradient); every chain
// gets a copy of its own. Fails only when asked to stop.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "base/seed.h"
#include "numerics/nuts.h"

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <vector>

namespace keenfall::blunting {

struct SamplingOptions {
  int chains = 4;
  int warmup = 300;
  int draws = 1000;  // kept, per chain
  double target_acceptance = 0.85;
};

// what: "the curves", for the sentence that says what was stopped.
template <class Density>
[[nodiscard]] base::Result<numerics::NutsDraws> sampled(const Density& density,
                                                        const std::string& what,
                                                        const SamplingOptions& options,
                                                        base::Seed seed,
                                                        const base::Executor& execute,
                                                        const base::ProgressReport& report) {
  std::vector<std::vector<double>> starts;
  for (int c = 0; c < options.chains; ++c) {
    starts.push_back(density.start_for(seed, static_cast<std::uint64_t>(c)));
  }
  const auto make_density = [&density]() -> numerics::LogDensity {
    const auto own = std::make_shared<Density>(density);
    return [own](std::span<const double> q, std::span<double> gradient) {
      return (*own)(q, gradient);
    };
  };
  numerics::NutsDraws draws = numerics::sample_nuts(make_density,
                                                    starts,
                                                    {.warmup = options.warmup,
                                                     .draws = options.draws,
                                                     .target_acceptance = options.target_acceptance,
                                                     .rough_variances = density.rough_variances()},
                                                    seed,
                                                    execute,
                                                    report);
  if (draws.stopped) {
    return base::failed({.kind = base::ProblemKind::interrupted,
                         .sentence = "Stopped before " + what + " were fitted; nothing was kept."});
  }
  return draws;
}

// attempt: from SamplingOptions to a Result of a fit with diagnostics.
template <class Attempt>
[[nodiscard]] auto first_or_careful(const SamplingOptions& options, Attempt attempt) {
  auto fit = attempt(options);
  if (!fit || fit->diagnostics.usable) return fit;
  SamplingOptions careful = options;
  careful.warmup *= 2;
  careful.draws *= 2;
  careful.target_acceptance = 0.98;
  return attempt(careful);
}

}  // namespace keenfall::blunting
