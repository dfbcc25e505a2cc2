// The quick engine's whole posterior, in the shape of the full one: arms, runs and scatters, so
// that all that is judged from a full fit can be judged from this one.
//
// The arms' draws are those of quick_fit.h, in another order: spread so that any stretch of them is
// like the whole. Runs follow the arms' draws; errors of readings and spots are estimates, the same
// in every draw. The effect of the start and the drift of the order are used but not drawn (zeros).
// Two or three milliseconds for some tens of runs. Method page: docs/methods/quick-engine.md
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "blunting/inference/model_spec.h"

namespace keenfall::blunting {

// Without chance: the same data give the same draws. Always usable.
[[nodiscard]] BluntingFit quick_posterior(const BluntingData& data, const ModelSpec& spec);

}  // namespace keenfall::blunting
