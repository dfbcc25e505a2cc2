// Least-squares curves of an arm's runs, drawn towards their own means as a hierarchical model
// would. The first guess that anchors.h builds on.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/model_spec.h"
#include "blunting/inference/run_fit.h"

#include <cstddef>
#include <vector>

namespace keenfall::blunting {

struct ArmRuns {
  std::vector<std::size_t> runs;
  std::vector<std::vector<RunPoint>> points;
};

// An arm's runs as a hierarchical model would place them: drawn towards their own means.
struct ArmFit {
  double log_shape = 0;
  PriorCentres means;
  Pull pull;  // that the runs were fitted with
  std::vector<RunFit> runs;
};

[[nodiscard]] std::vector<ArmRuns> runs_by_arm(const BluntingData& data);

// One reading's variance about the curves; at least that of one percent, for readings without
// scatter.
[[nodiscard]] double reading_variance(const std::vector<ArmRuns>& arms,
                                      const PriorCentres& centres,
                                      const PriorScales& priors);

// first: how the runs are drawn before their arm's means are known.
[[nodiscard]] ArmFit fit_arm(const ArmRuns& arm, const Pull& first, const PriorScales& priors);

}  // namespace keenfall::blunting
