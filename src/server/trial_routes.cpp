// The routes of one trial: as it was recorded and where it stands, and striking in it.
#include "server/app_parts.h"
#include "server/encoded.h"
#include "server/told_in.h"
#include "wire/app_requests.h"
#include "workbench/app_trial.h"

#include <string>
#include <utility>

namespace keenfall::server {

namespace {

HttpResponse trial(workbench::OpenApp& open,
                   const std::string& uid,
                   const materials::ToldIn& told) {
  const auto path = open.notebook();
  if (!path) return problem_answer(path.error());
  return encoded(workbench::trial_page(open.at_hand(), {.notebook = *path, .uid = uid}, told),
                 wire::trial_page_to_json,
                 uid);
}

HttpResponse struck(workbench::OpenApp& open, const std::string& uid, const std::string& body) {
  auto strike = wire::strike_from(body);
  if (!strike) return problems_answer(strike.error());
  const auto path = open.notebook();
  if (!path) return problem_answer(path.error());
  return encoded(workbench::strike_in_trial(
                     {.notebook = *path, .uid = uid, .strike = std::move(*strike)}, open.hand()),
                 wire::changed_to_json,
                 uid);
}

}  // namespace

void add_trial_routes(const AppParts& parts) {
  workbench::OpenApp& open = parts.open;
  parts.routes.add("GET",
                   "/api/v1/trials/{trial}",
                   telling_in_units([&open](const auto&, const auto& path, const auto& told) {
                     return trial(open, path.at("trial"), told);
                   }));
  parts.routes.add("POST",
                   "/api/v1/trials/{trial}/strikes",
                   [&open](const HttpRequest& request, const PathParameters& path) {
                     return struck(open, path.at("trial"), request.body);
                   });
}

}  // namespace keenfall::server
