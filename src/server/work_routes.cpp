#include "server/work_routes.h"

#include "base/require.h"
#include "server/answers.h"
#include "wire/problems_json.h"

namespace keenfall::server {

namespace {

HttpResponse no_such_work() {
  return not_found("There is no such work, or it ended so long ago that it is not kept any more.");
}

HttpResponse work_answer(const std::optional<wire::WorkTold>& told) {
  return told ? json_answer(wire::work_to_json(*told)) : no_such_work();
}

HttpResponse result_answer(const Works& works, const std::string& id) {
  constexpr int kConflict = 409;
  if (auto result = works.result(id)) return std::move(*result);
  if (!works.told(id)) return no_such_work();
  return json_answer(
      wire::refusal_to_json("not_found", "This work has no result, since it is not done."),
      kConflict);
}

}  // namespace

void add_work_routes(Routes& routes, Works& works) {
  routes.add(
      "GET", "/api/v1/works/{work}", [&works](const HttpRequest&, const PathParameters& path) {
        return work_answer(works.told(path.at("work")));
      });
  routes.add("DELETE",
             "/api/v1/works/{work}",
             [&works](const HttpRequest&, const PathParameters& path) {
               return work_answer(works.cancel(path.at("work")));
             },
             {.does = RouteDoes::reads});
  routes.add("GET",
             "/api/v1/works/{work}/result",
             [&works](const HttpRequest&, const PathParameters& path) {
               return result_answer(works, path.at("work"));
             });
}

HttpResponse begun_answer(const Works& works, const std::string& id) {
  constexpr int kAccepted = 202;
  const auto told = works.told(id);
  base::require(told.has_value(), "work that was just begun is there");
  return json_answer(wire::begun_work_to_json(*told), kAccepted);
}

}  // namespace keenfall::server
