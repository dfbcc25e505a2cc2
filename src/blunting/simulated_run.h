// Readings made from a known truth, to see whether the engine finds it again.
//
// A run's readings follow the blunting curve with an error of the spot at each checkpoint and an
// error of each reading; both in logs. Used by the demo, by simulate-and-recover tests and by
// planning.
#pragma once

#include "blunting/curves/log_logistic.h"
#include "numerics/random.h"
#include "trials/trial.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace keenfall::blunting {

struct ReadingNoise {
  double reading_scatter = 0.09;  // sd of one log reading
  double checkpoint_scatter = 0;  // sd of the log of the spot that was read
  // Absent: normal. Otherwise Student's t with so many degrees of freedom (above 2), same sd.
  std::optional<double> tail_degrees_of_freedom;
};

// An error of unit sd: normal, or Student's t where there is a tail (above 2).
[[nodiscard]] double unit_error(std::optional<double> tail_degrees_of_freedom,
                                numerics::RandomStream& random);

struct ReadingPlan {
  std::vector<double> checkpoints;    // cuts, rising, the first usually 0
  int repeats = 1;                    // readings per checkpoint
  std::vector<std::string> stations;  // shared out over the repeats in turn; empty: not recorded
  // Stop after the first checkpoint whose mean log reading is this many times the first.
  std::optional<double> stop_level;
};

// Readings of series 0, in the curve's unit; lower is keener.
[[nodiscard]] std::vector<trials::Reading> simulated_readings(const LogLogistic& curve,
                                                              const ReadingPlan& plan,
                                                              const ReadingNoise& noise,
                                                              numerics::RandomStream& random);

}  // namespace keenfall::blunting
