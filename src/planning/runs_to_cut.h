// Which runs of a plan are in its trial, and which are still to be cut: decided here and nowhere
// else.
//
// A planned run is in where the trial has a run of its blade in its medium at its place in the
// order; of one whose place was not recorded its name, that of the block, its edge and its specimen
// say which it is. A run that does not count is not in, and neither is one in which nothing was
// read. Cut otherwise than planned, at another angle say, it is in all the same.
#pragma once

#include "trials/plan.h"
#include "trials/trial.h"

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace keenfall::planning {

// Is the run recorded of that arm to the letter: blade, edge, medium and method?
[[nodiscard]] bool is_of_arm(const trials::Run& run,
                             const trials::PlannedArm& arm,
                             const trials::Plan& plan);

[[nodiscard]] bool is_in_trial(const trials::PlannedRun& planned,
                               const trials::Plan& plan,
                               const trials::Trial& trial);

// As wanted, or with a number behind it ("2 again 2"), whichever is the first that is not taken.
[[nodiscard]] std::string free_run_name(const std::string& wanted,
                                        const std::function<bool(const std::string&)>& is_taken);

struct RunToCut {
  std::size_t planned = 0;  // index into Plan::runs
  std::string name;         // its block's number, or with a number behind it: the arm has none yet

  bool operator==(const RunToCut&) const = default;
};

// Those that are not in, in the order of the plan's runs.
[[nodiscard]] std::vector<RunToCut> runs_to_cut(const trials::Plan& plan,
                                                const trials::Trial& trial);

}  // namespace keenfall::planning
