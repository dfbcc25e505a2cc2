// What a simulated trial is to be judged against: how long each arm's edges last, and how the arms
// stand to each other, without the errors of reading and of practice.
#pragma once

#include "wear/simulated_trial.h"

#include <cstddef>
#include <vector>

namespace keenfall::wear {

// An arm with what it takes to cut it once more.
struct ArmPlan {
  trials::Arm arm;
  std::size_t steel = 0;
  std::size_t work = 0;
  std::size_t edge = 0;

  bool operator==(const ArmPlan&) const = default;
};

// Of an arm of the plan: so many cuts, read at these. `start_ratio`: times the start of the land.
struct EdgeToCut {
  double dose_ratio = 1;
  double start_ratio = 1;
  std::vector<long> read_at_cuts;  // rising from 0; the last is the end
};
[[nodiscard]] ApexSimulation simulation_of(const TrialPlan& plan,
                                           const ArmPlan& arm,
                                           const EdgeToCut& edge);

// Thread push or cord draw.
[[nodiscard]] const trials::ReadingKind& kind_read(ApexReading reading);

// The plan's reading of the simulator's, in the plan's unit.
[[nodiscard]] double in_trial_unit(ApexReading reading, const EdgeReading& at);

[[nodiscard]] base::Result<std::vector<ArmTruth>> truth_of(const TrialPlan& plan,
                                                           const std::vector<ArmPlan>& arms,
                                                           const base::Executor& executor,
                                                           const base::ProgressReport& progress);

// Pairs of one work and one finish, of which both are known; in the order of the arms.
[[nodiscard]] std::vector<RatioTruth> ratios_of(const std::vector<ArmTruth>& arms);

}  // namespace keenfall::wear
