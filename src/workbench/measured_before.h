// What trials of the open notebook tell of how much runs scatter, for whoever plans the next one.
//
// Of each trial with readings that is small enough to be judged at once, every arm whose scatter is
// known, by the quick engine. Trials that measured one's own repeatability (a plan with one arm)
// stand first, then the others, the newest first among both. At most kMostTrialsMeasured trials
// with kMostRunsMeasured runs together are looked at; what is left out for that, or because it
// holds too many runs, is said. Left out without a word: arms of which no scatter is known, fits
// that are not usable, and simulated trials, in which nobody measured anything. Fails and throws as
// judged_now.h does.
#pragma once

#include "base/result.h"
#include "materials/told_in.h"
#include "wire/planning_json.h"
#include "workbench/judged_now.h"

#include <cstddef>
#include <string>

namespace keenfall::workbench {

// Together some half a second where nothing was judged yet.
inline constexpr std::size_t kMostTrialsMeasured = 20;
inline constexpr std::size_t kMostRunsMeasured = 240;

struct MeasuredAsked {
  std::string notebook;  // its path
  JudgedBy by;
  materials::ToldIn told_in = {};
};

[[nodiscard]] base::Result<wire::Measured> measured_before(AtHand& at_hand,
                                                           const MeasuredAsked& asked);

}  // namespace keenfall::workbench
