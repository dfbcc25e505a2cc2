// What fitted curves say by themselves, whatever is asked of them: the arms and runs, the check of
// the curves against the readings. Described once, they are judged for one margin or level after
// another (judge.h).
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"

#include <vector>

namespace keenfall::verdicts {

struct DescribedCurves {
  std::vector<ArmResult> arms;  // without cuts to a level or a reading that is asked for
  std::vector<RunResult> runs;  // of the trial, used or not, in its order; not compared yet
  std::vector<CovariateEffect> covariates;
  CurveCheck curve_check;
};

// In the data's unit. Where the fit is not usable, only arms and runs.
[[nodiscard]] DescribedCurves describe_curves(const trials::Trial& trial,
                                              const blunting::BluntingData& data,
                                              const blunting::BluntingFit& fit);

}  // namespace keenfall::verdicts
