// Cuts until an arm's edge has reached some bluntness, as posterior draws.
#pragma once

#include "blunting/curves/log_logistic.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "verdicts/judgement.h"

#include <cstddef>

namespace keenfall::verdicts {

// Draws of log cuts until `at` for the blades that were cut with (or for their steel).
// At a common reading an edge that starts blunter needs no cuts: such draws lie at log_of_no_cuts.
[[nodiscard]] blunting::Draws log_cuts_until(const blunting::BluntingData& data,
                                             const blunting::BluntingFit& fit,
                                             std::size_t arm,
                                             const At& at,
                                             ClaimAbout claim);

// The same of draws that another engine made.
[[nodiscard]] blunting::Draws log_cuts_until(const blunting::BluntingData& data,
                                             const blunting::ArmDraws& draws,
                                             const At& at,
                                             ClaimAbout claim);

// The same of one curve; -infinity where the start is there already.
[[nodiscard]] double log_cuts_until(const blunting::BluntingData& data,
                                    const blunting::LogLogistic& curve,
                                    const At& at);

// What stands for no cuts at all on a log scale: a millionth of the first checkpoint after the
// start.
[[nodiscard]] double log_of_no_cuts(const blunting::BluntingData& data);

// The same as an interval in cuts, with how many runs got there and whether it lies beyond them.
[[nodiscard]] CutsToLevel cuts_until(const blunting::BluntingData& data,
                                     const blunting::BluntingFit& fit,
                                     std::size_t arm,
                                     const At& at);

// The most cuts after which any run of the arm was read.
[[nodiscard]] double longest_run_cuts(const blunting::BluntingData& data, std::size_t arm);

// Whether the run's own readings got to `at`, measured from its own start.
[[nodiscard]] bool run_reached(const blunting::BluntingData& data,
                               const blunting::BluntingFit& fit,
                               std::size_t run,
                               const At& at);

}  // namespace keenfall::verdicts
