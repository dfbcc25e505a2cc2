// The comparisons of one family: ratios, bounds that hold together, verdicts.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "trials/trial.h"
#include "verdicts/judge.h"

#include <vector>

namespace keenfall::verdicts {

// All pairs of arms of every medium by every method.
[[nodiscard]] std::vector<Comparison> compare_all(const trials::Trial& trial,
                                                  const blunting::BluntingData& data,
                                                  const blunting::BluntingFit& fit,
                                                  const Question& question,
                                                  base::Seed seed);

}  // namespace keenfall::verdicts
