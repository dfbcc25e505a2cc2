#include "workbench/own_question.h"

#include "workbench/counted_look.h"
#include "workbench/plan_followed.h"

#include <algorithm>

namespace keenfall::workbench {

JudgeOptions options_for(const wire::Question& question, const TrialAtHand& trial) {
  JudgeOptions options;
  if (trial.asked && !trial.asked->claims.empty()) {
    options.worth_it_margin = trial.asked->claims.front().worth_it_margin;
  }
  if (trial.asked) options.looks = looks_to_judge_by(trial.asked->plan);
  if (question.worth_it_margin) options.worth_it_margin = *question.worth_it_margin;
  options.stop_level = question.stop_level;
  options.stop_reading = question.stop_reading;
  options.claim = question.claim;
  options.kind = question.kind;
  if (question.seed) options.seed = {*question.seed};
  return options;
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
