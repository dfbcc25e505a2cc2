// Draws from a smooth density over R^d by the no-U-turn sampler.
//
// Multinomial NUTS with a diagonal metric: Hoffman & Gelman 2014 (JMLR 15, 1593-1623) for the tree
// and the step size, Betancourt 2017 (arXiv:1701.02434) for multinomial weights and the generalised
// U-turn test. Knows nothing of knives: it takes a log density with its gradient.
// Chains run as tasks of the executor; each has its own random stream, so the draws do not depend
// on how many threads there are. A sampler that did badly is a result: look at divergences and at
// chain_diagnostics.h.
#pragma once

#include "base/execution.h"
#include "base/seed.h"

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

namespace keenfall::numerics {

// Returns log density (up to a constant) at q and writes its gradient; both spans have length d.
// May return -infinity (outside the support); the gradient is then ignored.
using LogDensity = std::function<double(std::span<const double> q, std::span<double> gradient)>;

// Makes one density per chain, so that each may keep scratch memory of its own.
using LogDensityMaker = std::function<LogDensity()>;

struct NutsOptions {
  int warmup = 500;
  int draws = 1000;  // kept, per chain
  double target_acceptance = 0.9;
  int max_tree_depth = 10;
  // The coordinates' variances as far as they can be guessed: good guesses spare the first warm-up
  // iterations long trajectories, bad ones are unlearned. Empty: none are known.
  std::vector<double> rough_variances;
};

struct NutsChain {
  std::vector<double> draws;  // draws x dimension, row-major
  int divergences = 0;        // after warm-up
  long gradient_evaluations = 0;
};

struct NutsDraws {
  std::size_t dimension = 0;
  std::vector<NutsChain> chains;
  bool stopped = false;  // the progress report asked to stop: draws are incomplete

  // The draws of one coordinate, one vector per chain.
  [[nodiscard]] std::vector<std::vector<double>> of(std::size_t coordinate) const;
};

// `starts`: one starting point per chain, all of the same length (that of rough_variances, if any),
// at finite density.
[[nodiscard]] NutsDraws sample_nuts(const LogDensityMaker& make_density,
                                    std::span<const std::vector<double>> starts,
                                    const NutsOptions& options,
                                    base::Seed seed,
                                    const base::Executor& execute,
                                    const base::ProgressReport& report);

}  // namespace keenfall::numerics
