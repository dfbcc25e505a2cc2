// The simulator joined with the curve of wear and hits: what physics computes of a blade in a
// medium in two numbers, and how well the curve through them describes the mean of many simulated
// edges.
//
// In: a scenario of one medium, which steel, how far and how often. Out: the curve computed without
// simulating a cut (wear scale in closed form, slope from single hits on a fresh edge), and the
// curve laid through the simulated mean push reading with that wear scale. Fails as `simulate` and
// `fit_wear_and_hits` do. docs/methods/wear-and-hits.md
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "base/seed.h"
#include "blunting/curves/wear_and_hits_fit.h"
#include "wear/apex_scenario.h"

#include <cstddef>
#include <vector>

namespace keenfall::workbench {

struct ReducedCurveAsked {
  std::size_t steel = 0;  // of the scenario
  long cuts = 255;        // 8 or more
  int runs = 40;
  int single_hits = 20000;
  base::Seed seed;
};

struct ReducedCurve {
  blunting::WearAndHits computed;  // of a fresh edge: nothing saturates
  blunting::WearAndHitsFit fitted;
  std::vector<blunting::CurvePoint> mean;  // push reading over its start, mean of the runs
};

[[nodiscard]] base::Result<ReducedCurve> reduced_curve(
    const wear::ApexScenario& scenario,
    const ReducedCurveAsked& asked,
    const base::Executor& executor,
    const base::ProgressReport& progress = base::unwatched());

}  // namespace keenfall::workbench
