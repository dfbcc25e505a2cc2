// The checkpoints of a trial by how well their centres are known: those with equal relative
// variance share what depends on the scatters alone.
#pragma once

#include "blunting/inference/blunting_data.h"

#include <cstddef>
#include <vector>

namespace keenfall::blunting {

struct CheckpointWeights {
  std::vector<double> relative_variance;  // of each class
  std::vector<double> count;              // uncensored checkpoints in each class
  std::vector<std::size_t> class_of;      // of each checkpoint, run after run
  std::vector<std::size_t> first_of_run;  // into class_of; one more than runs
  std::vector<std::size_t> censored;      // checkpoints below the resolution
};

[[nodiscard]] CheckpointWeights weights_of(const BluntingData& data);

}  // namespace keenfall::blunting
