// What a report shows of a judged run beside its numbers: where it stands in the trial, what was
// read at each checkpoint, and how it compares with its arm.
#pragma once

#include "blunting/inference/checkpoint_readings.h"
#include "verdicts/judgement.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace keenfall::verdicts {

struct ReportedRun {
  std::size_t run = 0;              // index into Trial::runs
  std::vector<std::size_t> series;  // indices into Trial::series: what was read, of what is judged
  // Of readings that make curves, in the judgement's unit.
  std::vector<blunting::CheckpointReading> checkpoints;
  // Its median cuts to half keenness over its arm's; absent where either has none.
  std::optional<double> half_keenness_over_arm;

  bool operator==(const ReportedRun&) const = default;
};

// One for each of Judgement::runs. Edges read against edges tested have neither series nor
// checkpoints there: those stand where the readings are judged.
[[nodiscard]] std::vector<ReportedRun> reported_runs(const trials::Trial& trial,
                                                     const Judgement& judgement);

}  // namespace keenfall::verdicts
