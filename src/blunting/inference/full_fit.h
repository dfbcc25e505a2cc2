// The full posterior of a trial's blunting curves, by the no-U-turn sampler.
//
// A fit that did not converge is a result: look at diagnostics.usable and its reasons. A first
// attempt that is not usable is repeated once, longer and more carefully. The draws do not depend
// on the number of threads. Fails only when asked to stop.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "base/seed.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/inference/fit_diagnostics.h"
#include "blunting/inference/model_parts.h"
#include "blunting/inference/model_spec.h"
#include "blunting/inference/sampled.h"

#include <cstddef>
#include <vector>

namespace keenfall::blunting {

// Natural logs, except the shape.
struct ArmDraws {
  Draws log_start;
  Draws log_half_keenness;        // of the blades that were cut with
  Draws log_half_keenness_steel;  // of the steel: a further specimen, on average
  Draws shape;
};

struct RunDraws {
  double log_start_median = 0;
  Draws log_start;
  Draws log_half_keenness;
};

struct BluntingFit {
  ModelParts parts;
  std::size_t chains = 0;
  std::size_t draws_per_chain = 0;
  std::vector<ArmDraws> arms;
  std::vector<RunDraws> runs;        // as BluntingData::runs
  std::vector<Draws> run_scatter;    // one, or one per medium
  std::vector<Draws> start_scatter;  // as run_scatter
  Draws reading_scatter;
  Draws checkpoint_scatter;  // zeros where the model has none, as the next two
  Draws start_effect;        // d log half keenness / d log start of a run
  Draws order_drift;         // of log half keenness, from the first run of the trial to the last
  FitDiagnostics diagnostics;

  [[nodiscard]] const Draws& run_scatter_of(std::size_t medium) const {
    return run_scatter.size() > 1 ? run_scatter[medium] : run_scatter[0];
  }
};

// The usual options; a longer warm-up and longer steps beyond some hundred runs
// (docs/decisions/0007-many-runs.md).
[[nodiscard]] SamplingOptions sampling_for(const BluntingData& data);

[[nodiscard]] base::Result<BluntingFit> fit_blunting(const BluntingData& data,
                                                     const ModelSpec& spec,
                                                     const SamplingOptions& options,
                                                     base::Seed seed,
                                                     const base::Executor& execute,
                                                     const base::ProgressReport& report);

}  // namespace keenfall::blunting
