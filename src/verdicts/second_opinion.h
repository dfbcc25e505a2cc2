// The quick engine's answers beside each comparison: a second opinion, and what would change if
// readings that were struck out counted, or doubtful ones did not.
//
// Same pairs, same level, same rules, same planned looks; another way of fitting (quick_fit.h).
// Where the second opinion disagrees the answer lies near a boundary, or one of the two is
// strained: that is said. Struck readings are counted after all in a fit of their own, and doubtful
// ones left out in another; both are compared with the second opinion, so that nothing else
// differs.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/inference/model_spec.h"
#include "trials/trial.h"
#include "verdicts/family.h"
#include "verdicts/judgement.h"

#include <span>

namespace keenfall::verdicts {

// Sets Comparison::quick and, where readings that share this fit are struck out or doubtful,
// Comparison::with_struck and without_doubtful; the latter not for a pair of which an arm has no
// other readings. `model`: the one the judgement was made with.
void add_second_opinions(Judgement& judgement,
                         const trials::Trial& trial,
                         const blunting::BluntingData& data,
                         const blunting::ModelSpec& model);

// Sets Comparison::quick of one family's comparisons from the draws of another way of fitting;
// quick: the same arms as theirs, in jointly drawn draws.
void add_second_opinions(std::span<Comparison> comparisons, const Family& quick, double margin);

}  // namespace keenfall::verdicts
