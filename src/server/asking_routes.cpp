// The routes of asking and planning: a trial that begins with a question, its draft, sealing it,
// and calling a trial otherwise.
#include "server/app_parts.h"
#include "server/encoded.h"
#include "wire/app_requests.h"
#include "wire/asked_json.h"
#include "workbench/app_asking.h"
#include "workbench/app_trial.h"

#include <string>

namespace keenfall::server {

namespace {

HttpResponse as_it_stands(workbench::OpenApp& open,
                          const workbench::TrialMeant& trial,
                          int status) {
  HttpResponse answer = encoded(workbench::trial_page(open.at_hand(), trial.notebook, trial.uid),
                                wire::trial_page_to_json,
                                trial.uid);
  constexpr int kOk = 200;
  if (answer.status == kOk) answer.status = status;
  return answer;
}

HttpResponse begun_with_question(workbench::OpenApp& open, const std::string& body) {
  constexpr int kCreated = 201;
  const auto request = wire::new_trial_from(body);
  if (!request) return problems_answer(request.error());
  const auto path = open.notebook();
  if (!path) return problem_answer(path.error());
  const auto uid = workbench::begin_trial(
      {.notebook = *path, .name = request->name}, request->asked, open.hand());
  if (!uid) return problem_answer(uid.error());
  return as_it_stands(open, {.notebook = *path, .uid = *uid}, kCreated);
}

// What a change of the trial comes to: the trial as it stands then, or why it was not made.
template <class Changed>
HttpResponse after_change(workbench::OpenApp& open,
                          const workbench::TrialMeant& trial,
                          const Changed& changed) {
  constexpr int kOk = 200;
  if (changed) return as_it_stands(open, trial, kOk);
  return encoded(
      changed, [](const auto&) { return std::string(); }, trial.uid);
}

HttpResponse asked_written(workbench::OpenApp& open,
                           const std::string& uid,
                           const std::string& body) {
  const auto asked = wire::asked_from(body);
  if (!asked) return problems_answer(asked.error());
  const auto path = open.notebook();
  if (!path) return problem_answer(path.error());
  const workbench::TrialMeant trial{.notebook = *path, .uid = uid};
  return after_change(open, trial, workbench::write_asked(trial, *asked, open.hand()));
}

HttpResponse asked_sealed(workbench::OpenApp& open, const std::string& uid) {
  const auto path = open.notebook();
  if (!path) return problem_answer(path.error());
  const workbench::TrialMeant trial{.notebook = *path, .uid = uid};
  return after_change(open, trial, workbench::seal_asked(trial, open.hand()));
}

HttpResponse trial_renamed(workbench::OpenApp& open,
                           const std::string& uid,
                           const std::string& body) {
  const auto name = wire::name_from(body);
  if (!name) return problems_answer(name.error());
  const auto path = open.notebook();
  if (!path) return problem_answer(path.error());
  return encoded(workbench::call_trial({.notebook = *path, .uid = uid}, *name, open.hand()),
                 wire::changed_to_json,
                 uid);
}

}  // namespace

void add_asking_routes(const AppParts& parts) {
  workbench::OpenApp& open = parts.open;
  parts.routes.add(
      "POST", "/api/v1/trials", [&open](const HttpRequest& request, const PathParameters&) {
        return begun_with_question(open, request.body);
      });
  parts.routes.add("PUT",
                   "/api/v1/trials/{trial}/asked",
                   [&open](const HttpRequest& request, const PathParameters& path) {
                     return asked_written(open, path.at("trial"), request.body);
                   });
  parts.routes.add("POST",
                   "/api/v1/trials/{trial}/seal",
                   [&open](const HttpRequest&, const PathParameters& path) {
                     return asked_sealed(open, path.at("trial"));
                   });
  parts.routes.add("PUT",
                   "/api/v1/trials/{trial}/name",
                   [&open](const HttpRequest& request, const PathParameters& path) {
                     return trial_renamed(open, path.at("trial"), request.body);
                   });
}

}  // namespace keenfall::server
