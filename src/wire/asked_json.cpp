#include "wire/asked_json.h"

#include "wire/asked_object.h"
#include "wire/plan_json.h"
#include "wire/plan_reader.h"
#include "wire/problems_object.h"
#include "wire/revision_text.h"
#include "wire/revisions.h"

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

// Of what is sent and of what is told; what only answers say is no part of it.
Json content_json(const std::vector<trials::Claim>& claims, const trials::Plan& plan) {
  return {{"claims", claims_json(claims)}, {"plan", plan_json(plan)}};
}

}  // namespace

std::string revision_of(const notebook::Asked& asked) {
  return revision_of_told(content_json(asked.claims, asked.plan));
}

base::ResultOrProblems<AskedToWrite> asked_from(const std::string& body) {
  RequestReader reader(body);
  AskedToWrite written{.asked = asked_in(reader), .revision = {}};
  reader.require("revision", "the revision that the trial tells; none where it tells none");
  written.revision = reader.text("revision").value_or("");
  return unless_problems(reader, std::move(written));
}

base::ResultOrProblems<std::optional<std::string>> seal_from(const std::string& body) {
  if (body.empty()) return std::nullopt;
  RequestReader reader(body);
  std::optional<std::string> revision = reader.text("revision");
  return unless_problems(reader, std::move(revision));
}

base::ResultOrProblems<NewTrial> new_trial_from(const std::string& body) {
  RequestReader reader(body);
  NewTrial trial;
  reader.require("name", "what the trial is to be called");
  trial.name = reader.text("name").value_or("");
  if (auto asked = reader.object("asked")) {
    asked->pass_over("revision");
    trial.asked = asked_in(*asked);
  }
  return unless_problems(reader, std::move(trial));
}

Json asked_json(const AskedTold& asked, const materials::ToldIn& told) {
  Json object = {{"revision", revision_of_told(content_json(asked.claims, asked.plan))},
                 {"claims", claims_json(asked.claims)}};
  if (asked.plan != trials::Plan()) object["plan"] = plan_json(asked.plan, told);
  if (asked.sealed_at_utc) {
    object["sealed_at_utc"] = *asked.sealed_at_utc;
    if (asked.sealing) {
      object["sealing"] = {{"entry", asked.sealing->entry}, {"is_held", asked.sealing->is_held}};
    }
    return object;
  }
  object["flaws"] = problems_array(asked.flaws);
  object["advice"] = sentences_json(asked.advice);
  return object;
}

}  // namespace keenfall::wire
