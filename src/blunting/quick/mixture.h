// The hyperparameters of a group of media integrated out numerically: a mixture of normals.
//
// The scatter from run to run on a grid even in logs; the scatters of starts, shapes, blocks and
// specimens and the effect of the start by a star of places about their joint mode. Every place is
// weighed by its evidence times its prior.
#pragma once

#include "blunting/inference/model_spec.h"
#include "blunting/quick/scatter_group.h"

#include <vector>

namespace keenfall::blunting {

struct MixturePart {
  Hyperparameters at;
  GivenNormal given;
  double weight = 0;
};

// Settles the group at the mode; the weights add up to 1.
[[nodiscard]] std::vector<MixturePart> mixture_of(ScatterGroup& group, const PriorScales& priors);

}  // namespace keenfall::blunting
