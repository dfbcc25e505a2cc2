#include "wire/home.h"

#include "wire/home_object.h"
#include "wire/told_object.h"

#include <string_view>

namespace keenfall::wire {

namespace {

std::string_view name_of(StepName step) {
  switch (step) {
    case StepName::ask:
      return "ask";
    case StepName::plan:
      return "plan";
    case StepName::judge:
      return "judge";
    case StepName::tell:
      return "tell";
  }
  return {};
}

std::string_view name_of(StepState state) {
  switch (state) {
    case StepState::done:
      return "done";
    case StepState::next:
      return "next";
    case StepState::ready:
      return "ready";
    case StepState::waiting:
      return "waiting";
  }
  return {};
}

Json step_json(const Step& step) {
  return {{"step", name_of(step.step)}, {"state", name_of(step.state)}, {"words", step.words}};
}

Json answer_json(const Answer& answer) {
  Json object = {{"sentence", sentence_json(answer.sentence)}, {"of_now", answer.of_now}};
  if (!answer.is_judged) object["not_judged"] = true;
  if (answer.more) object["more"] = sentence_json(*answer.more);
  put_text(object, "judged_at_utc", answer.judged_at_utc);
  return object;
}

Json card_json(const TrialCard& card) {
  Json object = {
      {"uid", card.uid}, {"name", card.name}, {"runs", card.runs}, {"readings", card.readings}};
  put_text(object, "claim", card.claim);
  put_path(object, card.path);
  if (card.answer) object["answer"] = answer_json(*card.answer);
  return object;
}

}  // namespace

void put_path(Json& object, const Path& path) {
  object["steps"] = Json::array();
  for (const Step& step : path.steps) object["steps"].push_back(step_json(step));
  object["next"] = step_json(path.next);
}

std::string home_to_json(const Home& home) {
  Json object = {{"name", home.name}, {"trials", Json::array()}, {"last_entry", home.last_entry}};
  for (const TrialCard& card : home.trials) object["trials"].push_back(card_json(card));
  if (home.undoes) object["undoes"] = {{"entry", home.undoes->entry}, {"what", home.undoes->what}};
  return in_one_line(object);
}

std::string answer_to_json(const Answer& answer) { return in_one_line(answer_json(answer)); }

}  // namespace keenfall::wire
