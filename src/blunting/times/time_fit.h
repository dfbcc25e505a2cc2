// The full posterior of how long edges last by one test, by the no-U-turn sampler.
//
// As full_fit.h: a fit that did not converge is a result with its reasons, repeated once more
// carefully; the draws do not depend on the number of threads; fails only when asked to stop.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "base/seed.h"
#include "blunting/inference/fit_diagnostics.h"
#include "blunting/inference/full_fit.h"
#include "blunting/times/time_data.h"

#include <cstddef>
#include <vector>

namespace keenfall::blunting {

// Natural logs of the cuts until half of an arm's edges have failed.
struct ArmTimes {
  Draws log_cuts;        // of the blades that were cut with
  Draws log_cuts_steel;  // of the steel: a further specimen, on average
};

struct TimeFit {
  std::size_t chains = 0;
  std::size_t draws_per_chain = 0;
  std::vector<ArmTimes> arms;      // as TimeData::groups.arms
  std::vector<Draws> run_scatter;  // per medium, sd of log cuts
  FitDiagnostics diagnostics;
};

[[nodiscard]] base::Result<TimeFit> fit_times(const TimeData& data,
                                              const SamplingOptions& options,
                                              base::Seed seed,
                                              const base::Executor& execute,
                                              const base::ProgressReport& report);

}  // namespace keenfall::blunting
