// The quick engine's answers beside each comparison: a second opinion, and what the readings that
// were struck out would change.
//
// Same pairs, same level, same rules, same planned looks; another way of fitting (quick_fit.h).
// Where the second opinion disagrees the answer lies near a boundary, or one of the two is
// strained: that is said. Struck readings are counted after all in a fit of their own, and compared
// with the second opinion, so that nothing but the strikes differs.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/model_spec.h"
#include "trials/trial.h"
#include "verdicts/judgement.h"

namespace keenfall::verdicts {

// Sets Comparison::quick and, where readings that share this fit are struck out,
// Comparison::with_struck. `model`: the one the judgement was made with.
void add_second_opinions(Judgement& judgement,
                         const trials::Trial& trial,
                         const blunting::BluntingData& data,
                         const blunting::ModelSpec& model);

}  // namespace keenfall::verdicts
