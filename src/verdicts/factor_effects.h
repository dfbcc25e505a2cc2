// What the declared factors do to lasting, one at a time and together (factor_effect.h has the
// values).
//
// Factors: blade (or its steel, where the blades are of different known steels), medium, bevel
// angle, apex angle, finish, thickness behind the edge, cut method. One that changes only along
// with an earlier one is named beside it, not told apart. Found in the largest crossed table of
// arms, for factors of at most 12 levels, and at most 60 effects in all.
// Method page: docs/methods/factor-effects.md
#pragma once

#include "materials/told_in.h"
#include "trials/trial.h"
#include "verdicts/arms_lasting.h"
#include "verdicts/factor_effect.h"

#include <optional>

namespace keenfall::verdicts {

struct FactorQuestion {
  double worth_it_margin = 1.5;  // above 1
  materials::ToldIn told_in;     // lengths
};

// Nothing where no two factors are crossed.
[[nodiscard]] std::optional<FactorEffects> find_factor_effects(const trials::Trial& trial,
                                                               const ArmsLasting& lasting,
                                                               const FactorQuestion& question);

}  // namespace keenfall::verdicts
