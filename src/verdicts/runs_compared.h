// Where the runs of a judgement are compared, and how long each lasts to there: what stands beside
// its cuts to half keenness.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "verdicts/judgement.h"

#include <cstddef>

namespace keenfall::verdicts {

// Where the arm is compared with the others of its medium; where it is not: half keenness, or the
// test. Media may be compared at different levels and readings.
[[nodiscard]] At where_compared(const Judgement& judgement, std::size_t arm);

// Sets compared_cuts and stopped_before_compared of one run that was used; `run`: index into
// BluntingData::runs. A run that starts past a common reading has next to no cuts
// (log_of_no_cuts).
void put_compared_cuts(RunResult& result,
                       const blunting::BluntingData& data,
                       const blunting::BluntingFit& fit,
                       std::size_t run,
                       const At& at);

}  // namespace keenfall::verdicts
