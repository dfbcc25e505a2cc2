// A simulated trial and its truth in words.
#pragma once

#include "cli/look.h"
#include "wear/simulated_trial.h"

#include <string>

namespace keenfall::cli {

// What was made, by how much it scatters, and that it is no evidence; each line ends in a newline.
[[nodiscard]] std::string simulated_trial_text(const wear::TrialPlan& plan,
                                               const wear::SimulatedTrial& made,
                                               const Look& look);

// Lives and ratios without the errors of practice.
[[nodiscard]] std::string truth_text(const wear::SimulatedTrial& made, const Look& look);

}  // namespace keenfall::cli
