// Arms of which no run could be used: said in words, since no result can stand for them.
#pragma once

#include "trials/trial.h"
#include "verdicts/judgement.h"

namespace keenfall::verdicts {

// Moves the runs of such arms from Judgement::runs (which stand as in the trial) to
// runs_of_arms_not_judged, and names the arms, with the reasons, in cannot_say. Every run left
// belongs to one of Judgement::arms.
void set_aside_arms_not_judged(Judgement& judgement, const trials::Trial& trial);

}  // namespace keenfall::verdicts
