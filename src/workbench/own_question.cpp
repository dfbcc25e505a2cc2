#include "workbench/own_question.h"

#include "workbench/counted_look.h"
#include "workbench/plan_followed.h"

#include <algorithm>
#include <utility>

namespace keenfall::workbench {

JudgeOptions options_for(const wire::Question& question, const TrialAtHand& trial) {
  JudgeOptions options;
  if (question.worth_it_margin) {
    options.worth_it_margin = *question.worth_it_margin;
    options.worth_it_is_asked = true;
  }
  options.stop_level = question.stop_level;
  options.stop_reading = question.stop_reading;
  options.claim = question.claim;
  options.kind = question.kind;
  if (question.seed) options.seed = {*question.seed};
  return trial.asked ? as_planned(std::move(options), *trial.asked) : options;
}

bool is_own_question(const wire::Question& question, const TrialAtHand& trial) {
  const JudgeOptions own = options_for({}, trial);
  const JudgeOptions asked = options_for(question, trial);
  return !question.with_struck && asked.seed.number == own.seed.number &&
         question_of(asked) == question_of(own);
}

const LookAtHand* newest_own_look(const TrialAtHand& trial) {
  const std::string own = question_of(options_for({}, trial));
  const auto newest = std::find_if(trial.looks.rbegin(),
                                   trial.looks.rend(),
                                   [&](const LookAtHand& look) { return look.question == own; });
  return newest == trial.looks.rend() ? nullptr : &*newest;
}

}  // namespace keenfall::workbench
