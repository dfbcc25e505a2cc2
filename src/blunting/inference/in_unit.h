// The same readings and the same fit, told in another unit.
//
// Nothing is fitted anew: on a log scale another unit is a shift, and half keenness, shapes and
// scatters do not know the unit. The unit must be of the dimension of the data's own.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"

#include <string>

namespace keenfall::blunting {

[[nodiscard]] BluntingData in_unit(BluntingData data, const std::string& unit);

// `data`: what it was fitted to, in the unit of the fit.
[[nodiscard]] BluntingFit in_unit(BluntingFit fit,
                                  const BluntingData& data,
                                  const std::string& unit);

}  // namespace keenfall::blunting
