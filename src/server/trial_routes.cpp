// The routes of one trial: as it was recorded and where it stands, and striking in it.
#include "server/app_parts.h"
#include "server/encoded.h"
#include "server/meant_notebook.h"
#include "server/told_in.h"
#include "wire/app_requests.h"
#include "workbench/app_trial.h"

#include <string>
#include <utility>

namespace keenfall::server {

namespace {

HttpResponse trial(workbench::OpenApp& open,
                   const std::string& uid,
                   const HttpRequest& request,
                   const materials::ToldIn& told) {
  const auto path = notebook_to_read(open, request);
  if (!path) return path.error();
  return encoded(workbench::trial_page(open.at_hand(), {.notebook = *path, .uid = uid}, told),
                 wire::trial_page_to_json,
                 uid);
}

HttpResponse struck(workbench::OpenApp& open, const std::string& uid, const HttpRequest& request) {
  const auto path = notebook_to_change(open, request);
  if (!path) return path.error();
  auto strike = wire::strike_from(request.body);
  if (!strike) return problems_answer(strike.error());
  return encoded(
      workbench::strike_in_trial({.notebook = *path, .uid = uid, .strike = std::move(*strike)},
                                 open.hand(request.came_at)),
      wire::changed_to_json,
      uid);
}

}  // namespace

void add_trial_routes(const AppParts& parts) {
  workbench::OpenApp& open = parts.open;
  parts.routes.add(
      "GET",
      "/api/v1/trials/{trial}",
      telling_in_units([&open](const auto& request, const auto& path, const auto& told) {
        return trial(open, path.at("trial"), request, told);
      }));
  parts.routes.add("POST",
                   "/api/v1/trials/{trial}/strikes",
                   [&open](const HttpRequest& request, const PathParameters& path) {
                     return struck(open, path.at("trial"), request);
                   });
}

}  // namespace keenfall::server
