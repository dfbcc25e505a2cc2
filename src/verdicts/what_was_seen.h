// What is said beside the answer: each run as it went, and what the data cannot say.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"

#include <string>
#include <vector>

namespace keenfall::verdicts {

// One result per run of the trial, used or not, in the trial's order.
[[nodiscard]] std::vector<RunResult> run_results(const trials::Trial& trial,
                                                 const blunting::BluntingData& data,
                                                 const blunting::BluntingFit& fit);

// Plain sentences; judgement: with its arms and comparisons already in place.
[[nodiscard]] std::vector<std::string> what_cannot_be_said(const trials::Trial& trial,
                                                           const blunting::BluntingData& data,
                                                           const Judgement& judgement);

}  // namespace keenfall::verdicts
