// A second, quicker way to the same answer: curves as parabolas, then numerical integration.
//
// The same model and priors as the full posterior (model_spec.h), reached otherwise: each run's log
// likelihood is a parabola about the joint mode (reweighted Gauss-Newton), so that given the
// scatters and the effect of the start everything is normal and solved by linear algebra; those are
// integrated by their evidence times their priors (mixture.h). The errors of readings and spots are
// estimated, not integrated. No sampler and no threads: one or two milliseconds. Method page:
// docs/methods/quick-engine.md
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/full_fit.h"
#include "blunting/inference/model_spec.h"

#include <vector>

namespace keenfall::blunting {

struct QuickFit {
  std::vector<ArmDraws> arms;  // as BluntingData::arms; kQuickDraws each, drawn from the mixture
};

inline constexpr std::size_t kQuickDraws = 4000;

// Without chance: the same data give the same draws, spread evenly instead of at random.
[[nodiscard]] QuickFit quick_fit(const BluntingData& data, const ModelSpec& spec);

// The same draws as a full fit would hand them on, for who judges by them; what only a full fit has
// is left empty.
[[nodiscard]] BluntingFit quick_draws(const BluntingData& data, const ModelSpec& spec);

}  // namespace keenfall::blunting
