// Trials that are looked at more than once by a plan stated beforehand (verdicts/planned_looks.h),
// with the whole model in the loop: made run by run, fitted anew at every look by the quick engine.
#pragma once

#include "trust/measuring/cell_sums.h"
#include "trust/measuring/sums.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace keenfall::trust {

struct LooksCell {
  std::string_view name;
  std::string_view about;
  std::vector<int> looks;  // runs of each blade
  double run_scatter = 0.25;
};

[[nodiscard]] std::span<const LooksCell> looks_cells();
[[nodiscard]] std::string definition_of(const LooksCell& cell);

// Of each trial: did any look say "longer or shorter" or "practically the same", did the intervals
// of all looks hold the truth, and the same of a single look's intervals ("unstretched ...").
[[nodiscard]] Sums looks_sums(const LooksCell& cell, TrueRatio ratio, const Batch& batch);

}  // namespace keenfall::trust
