// For tests: trials of two blades, A and B, made from a known truth, and their fit.
//
// Thread push readings in gf, three at each checkpoint, starting near 104 gf; B's half keenness is
// 40 cuts, its shape 0.75 against A's 0.7.
#pragma once

#include "base/execution.h"
#include "blunting/inference/full_fit.h"
#include "numerics/interval.h"
#include "trials/trial.h"

#include <cstdint>

namespace keenfall::blunting {

struct Truth {
  double ratio = 1;  // of A's half keenness to B's 40 cuts
  int runs_each = 4;
  double run_scatter = 0.25;
  double start_scatter = 0.06;
  double start_effect = 0;  // of a run's log start on its log half keenness
  double order_drift = 0;   // of log half keenness over the trial; runs are cut in shuffled order
  double slip_every = 0;    // every so many readings one is ten times too large; 0: never
  int specimens_each = 0;   // pieces that the runs are cut with in turn; 0: one, unnamed
  double specimen_scatter = 0;  // sd of log half keenness between pieces of one blade
  int blocks = 0;               // that the runs of each blade are spread over in turn; 0: none
  double block_scatter = 0;     // sd of log half keenness between blocks
};

[[nodiscard]] trials::Trial simulated(const Truth& truth, std::uint64_t seed);

struct Fitted {
  BluntingData data;
  BluntingFit fit;
};

[[nodiscard]] Fitted fitted(const trials::Trial& trial,
                            const ModelSpec& spec,
                            const base::Executor& execute);

// Of log half keenness, A less B.
[[nodiscard]] numerics::Interval log_ratio_of(const BluntingFit& fit);

}  // namespace keenfall::blunting
