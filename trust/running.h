// Experiments run batch by batch on several threads, kept as they go, and stopped when asked to.
#pragma once

#include "base/execution.h"
#include "trust/experiment.h"
#include "trust/kept_batches.h"

#include <span>
#include <string>
#include <vector>

namespace keenfall::trust {

struct Running {
  Experiment experiment;
  KeptBatches kept;
};

// Runs what is not kept yet, in the order given. False: the report asked to stop; what was measured
// by then is kept. Throws what keeping throws.
[[nodiscard]] bool run_all(std::span<Running* const> runs,
                           unsigned threads,
                           const base::ProgressReport& report);

}  // namespace keenfall::trust
