// The quick engine's answer beside each comparison, and whether it is the same.
//
// Same pairs, same level, same rules, same planned looks; another way of fitting (quick_fit.h).
// Where the two disagree the answer lies near a boundary, or one of them is strained: that is said.
#pragma once

#include "blunting/inference/blunting_data.h"
#include "blunting/quick/quick_fit.h"
#include "verdicts/judgement.h"

namespace keenfall::verdicts {

// Sets Comparison::quick of every comparison between arms whose curves were fitted.
void add_second_opinions(Judgement& judgement,
                         const blunting::BluntingData& data,
                         const blunting::QuickFit& quick);

}  // namespace keenfall::verdicts
