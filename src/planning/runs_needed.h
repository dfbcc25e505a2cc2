// How many runs of each arm a plan needs to settle a comparison, where the truth is as stated.
//
// The smallest number from 2 to 20 with a chance of 80 % or more that the verdict is any but "not
// settled", by trials cut in imagination (chances.h), looked at once, at their end. A closed
// form says where to begin (two_sample_chances.h); what it says is not trusted further.
// Method page: docs/methods/planning.md
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "planning/chances.h"

#include <optional>

namespace keenfall::planning {

inline constexpr int kFewestRunsEach = 2;
inline constexpr int kMostRunsNeeded = 20;
inline constexpr double kChanceWanted = 0.8;

struct RunsNeeded {
  double true_ratio = 1;
  std::optional<int> runs_each;  // absent: more than kMostRunsNeeded
  Chance settled;                // with so many; with kMostRunsNeeded where there is no number
  int trials = 0;                // imagined for each number that was tried

  bool operator==(const RunsNeeded&) const = default;
};

// plan.runs_each, its looks and its order are not heeded; asked.true_ratios neither. Fails as
// chances_of does.
[[nodiscard]] base::Result<RunsNeeded> runs_needed(const trials::Plan& plan,
                                                   const Assumptions& assumptions,
                                                   const ChancesAsked& asked,
                                                   double true_ratio,
                                                   const base::Executor& execute,
                                                   const base::ProgressReport& report);

}  // namespace keenfall::planning
