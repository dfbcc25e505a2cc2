// For tests: the fit of a trial of two blades made from a known truth (simulated_pair.h).
#pragma once

#include "base/execution.h"
#include "blunting/inference/full_fit.h"
#include "blunting/simulated_pair.h"
#include "numerics/interval.h"
#include "trials/trial.h"

namespace keenfall::blunting {

struct Fitted {
  BluntingData data;
  BluntingFit fit;
};

[[nodiscard]] Fitted fitted(const trials::Trial& trial,
                            const ModelSpec& spec,
                            const base::Executor& execute,
                            const SamplingOptions& options = {});

// Of log half keenness, A less B.
[[nodiscard]] numerics::Interval log_ratio_of(const BluntingFit& fit);

}  // namespace keenfall::blunting
