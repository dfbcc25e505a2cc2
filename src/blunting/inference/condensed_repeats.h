// Repeats at one checkpoint condensed to one value, and the scatter of repeats pooled over a trial.
//
// Exactly, for Gaussian errors: the mean of the logs and its relative variance 1/n are sufficient,
// together with the pooled sum of squares within checkpoints. Robustly: Huber's M-estimate of the
// centre with k = 1.5 pooled scatters, so that a slip among seven readings is pulled in instead of
// dragging the checkpoint along (Huber 1981, Robust Statistics, sections 4.2 and 6.4). A reading
// pulled in counts as a fraction of one.
#pragma once

#include <span>
#include <vector>

namespace keenfall::blunting {

struct CondensedCheckpoint {
  double centre = 0;             // of the log readings
  double relative_variance = 1;  // variance of the centre / variance of one reading
};

struct CondensedRepeats {
  std::vector<CondensedCheckpoint> checkpoints;  // in the order given
  double degrees_of_freedom = 0;                 // of the pooled scatter: sum of (n - 1)
  double sum_of_squares = 0;  // degrees of freedom x squared scatter of one log reading
};

// log_readings: one vector per checkpoint, none empty.
[[nodiscard]] CondensedRepeats condense_exactly(std::span<const std::vector<double>> log_readings);

[[nodiscard]] CondensedRepeats condense_robustly(std::span<const std::vector<double>> log_readings);

}  // namespace keenfall::blunting
