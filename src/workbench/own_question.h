// A trial's own question: the margin and looks that its sealed claim and plan wrote down, else the
// usual, with nothing else asked for. It is the one whose answer is kept and counted.
#pragma once

#include "wire/question.h"
#include "workbench/judge_options.h"
#include "workbench/trials_at_hand.h"

#include <string>

namespace keenfall::workbench {

// What is absent is as the trial's sealed claim and plan say (plan_followed.h), else the usual.
[[nodiscard]] JudgeOptions options_for(const wire::Question& question, const TrialAtHand& trial);

[[nodiscard]] bool is_own_question(const wire::Question& question, const TrialAtHand& trial);

// The newest judging by the trial's own question; nullptr where there is none.
[[nodiscard]] const LookAtHand* newest_own_look(const TrialAtHand& trial);

}  // namespace keenfall::workbench
