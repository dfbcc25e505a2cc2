// The routes of asking and planning: a trial that begins with a question, its draft, sealing it,
// and calling a trial otherwise.
#include "server/app_parts.h"
#include "server/encoded.h"
#include "server/meant_notebook.h"
#include "server/told_in.h"
#include "wire/app_requests.h"
#include "wire/asked_json.h"
#include "workbench/app_asking.h"
#include "workbench/app_trial.h"

#include <string>

namespace keenfall::server {

namespace {

using materials::ToldIn;

HttpResponse as_it_stands(workbench::OpenApp& open,
                          const workbench::TrialMeant& trial,
                          const ToldIn& told,
                          int status) {
  HttpResponse answer = encoded(
      workbench::trial_page(open.at_hand(), trial, told), wire::trial_page_to_json, trial.uid);
  constexpr int kOk = 200;
  if (answer.status == kOk) answer.status = status;
  return answer;
}

HttpResponse begun_with_question(workbench::OpenApp& open,
                                 const HttpRequest& request,
                                 const ToldIn& told) {
  constexpr int kCreated = 201;
  const auto path = notebook_to_change(open, request);
  if (!path) return path.error();
  const auto begun = wire::new_trial_from(request.body);
  if (!begun) return problems_answer(begun.error());
  const auto uid = workbench::begin_trial(
      {.notebook = *path, .name = begun->name}, begun->asked, open.hand(request.came_at));
  if (!uid) return problem_answer(uid.error());
  return as_it_stands(open, {.notebook = *path, .uid = *uid}, told, kCreated);
}

// What a change of the trial comes to: the trial as it stands then, or why it was not made.
template <class Changed>
HttpResponse after_change(workbench::OpenApp& open,
                          const workbench::TrialMeant& trial,
                          const ToldIn& told,
                          const Changed& changed) {
  constexpr int kOk = 200;
  if (changed) return as_it_stands(open, trial, told, kOk);
  return encoded(
      changed, [](const auto&) { return std::string(); }, trial.uid);
}

HttpResponse asked_written(workbench::OpenApp& open,
                           const std::string& uid,
                           const HttpRequest& request,
                           const ToldIn& told) {
  const auto path = notebook_to_change(open, request);
  if (!path) return path.error();
  const auto asked = wire::asked_from(request.body);
  if (!asked) return problems_answer(asked.error());
  const workbench::TrialMeant trial{.notebook = *path, .uid = uid};
  return after_change(
      open, trial, told, workbench::write_asked(trial, *asked, open.hand(request.came_at)));
}

HttpResponse asked_sealed(workbench::OpenApp& open,
                          const std::string& uid,
                          const HttpRequest& request,
                          const ToldIn& told) {
  const auto path = notebook_to_change(open, request);
  if (!path) return path.error();
  const auto revision = wire::seal_from(request.body);
  if (!revision) return problems_answer(revision.error());
  const workbench::TrialMeant trial{.notebook = *path, .uid = uid};
  return after_change(
      open, trial, told, workbench::seal_asked(trial, *revision, open.hand(request.came_at)));
}

HttpResponse trial_renamed(workbench::OpenApp& open,
                           const std::string& uid,
                           const HttpRequest& request) {
  const auto path = notebook_to_change(open, request);
  if (!path) return path.error();
  const auto name = wire::name_from(request.body);
  if (!name) return problems_answer(name.error());
  return encoded(
      workbench::call_trial({.notebook = *path, .uid = uid}, *name, open.hand(request.came_at)),
      wire::changed_to_json,
      uid);
}

}  // namespace

void add_asking_routes(const AppParts& parts) {
  workbench::OpenApp& open = parts.open;
  parts.routes.add("POST",
                   "/api/v1/trials",
                   telling_in_units([&open](const auto& request, const auto&, const auto& told) {
                     return begun_with_question(open, request, told);
                   }));
  parts.routes.add(
      "PUT",
      "/api/v1/trials/{trial}/asked",
      telling_in_units([&open](const auto& request, const auto& path, const auto& told) {
        return asked_written(open, path.at("trial"), request, told);
      }));
  parts.routes.add(
      "POST",
      "/api/v1/trials/{trial}/seal",
      telling_in_units([&open](const auto& request, const auto& path, const auto& told) {
        return asked_sealed(open, path.at("trial"), request, told);
      }));
  parts.routes.add("PUT",
                   "/api/v1/trials/{trial}/name",
                   [&open](const HttpRequest& request, const PathParameters& path) {
                     return trial_renamed(open, path.at("trial"), request);
                   });
}

}  // namespace keenfall::server
