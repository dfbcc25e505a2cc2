#include "blunting/inference/checkpoint_weights.h"

#include <map>

namespace keenfall::blunting {

CheckpointWeights weights_of(const BluntingData& data) {
  CheckpointWeights weights;
  std::map<double, std::size_t> known;
  for (const RunData& run : data.runs) {
    weights.first_of_run.push_back(weights.class_of.size());
    for (const Checkpoint& checkpoint : run.checkpoints) {
      const auto [found, is_new] =
          known.emplace(checkpoint.relative_variance, weights.relative_variance.size());
      if (is_new) {
        weights.relative_variance.push_back(checkpoint.relative_variance);
        weights.count.push_back(0);
      }
      if (checkpoint.below_resolution) {
        weights.censored.push_back(weights.class_of.size());
      } else {
        ++weights.count[found->second];
      }
      weights.class_of.push_back(found->second);
    }
  }
  weights.first_of_run.push_back(weights.class_of.size());
  return weights;
}

}  // namespace keenfall::blunting
