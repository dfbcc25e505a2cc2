// Each run by itself, and two arms compared by their runs alone (run_by_run.h has the values).
#pragma once

#include "base/seed.h"
#include "blunting/curves/log_logistic.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "verdicts/judgement.h"

#include <optional>
#include <vector>

namespace keenfall::verdicts {

// One for each of BluntingData::runs: its least-squares curve; nothing where its readings do not
// determine one.
[[nodiscard]] std::vector<std::optional<blunting::LogLogistic>> curves_of_runs(
    const blunting::BluntingData& data, const blunting::BluntingFit& fit);

// Of the trial's comparisons together so many arrangements are counted at most.
struct RunByRunBudget {
  std::size_t comparisons = 1;
  base::Seed seed{1};
};

// Nothing where either arm has no run with a curve of its own, or both have one only.
[[nodiscard]] std::optional<RunByRun> compare_run_by_run(
    const blunting::BluntingData& data,
    const std::vector<std::optional<blunting::LogLogistic>>& curves,
    const Comparison& pair,
    const RunByRunBudget& budget);

}  // namespace keenfall::verdicts
