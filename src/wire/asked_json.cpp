#include "wire/asked_json.h"

#include "wire/asked_object.h"
#include "wire/plan_json.h"
#include "wire/plan_reader.h"
#include "wire/problems_object.h"

#include <utility>

namespace keenfall::wire {

namespace {

notebook::Asked asked_in(RequestReader& reader) {
  notebook::Asked asked;
  reader.require("claims", "a list, which may be empty");
  asked.claims = claims_from(reader);
  if (auto plan = reader.object("plan")) asked.plan = plan_from(*plan);
  return asked;
}

}  // namespace

base::ResultOrProblems<notebook::Asked> asked_from(const std::string& body) {
  RequestReader reader(body);
  notebook::Asked asked = asked_in(reader);
  return unless_problems(reader, std::move(asked));
}

base::ResultOrProblems<NewTrial> new_trial_from(const std::string& body) {
  RequestReader reader(body);
  NewTrial trial;
  reader.require("name", "what the trial is to be called");
  trial.name = reader.text("name").value_or("");
  if (auto asked = reader.object("asked")) trial.asked = asked_in(*asked);
  return unless_problems(reader, std::move(trial));
}

Json asked_json(const AskedTold& asked, const materials::ToldIn& told) {
  Json object = {{"claims", claims_json(asked.claims)}};
  if (asked.plan != trials::Plan()) object["plan"] = plan_json(asked.plan, told);
  if (asked.sealed_at_utc) {
    object["sealed_at_utc"] = *asked.sealed_at_utc;
    return object;
  }
  object["flaws"] = problems_array(asked.flaws);
  object["advice"] = sentences_json(asked.advice);
  return object;
}

}  // namespace keenfall::wire
