// The routes of the scale at the bench: which is in use, what it shows, and the reading it holds.
#include "server/answers.h"
#include "server/app_parts.h"
#include "wire/scale_page.h"
#include "workbench/scale_in_use.h"

#include <algorithm>
#include <string>

namespace keenfall::server {

namespace {

using workbench::ScaleInUse;

HttpResponse told_of(const ScaleInUse& scale) {
  return json_answer(wire::scale_to_json(scale.told()));
}

// From the network no other file of this machine is opened than a line that is told.
bool may_be_used(const wire::UseScale& use, const ScaleInUse& scale, AtDesk at_desk) {
  return at_desk == AtDesk::yes || std::ranges::count(scale.told().devices, use.port.path) > 0;
}

HttpResponse used(ScaleInUse& scale, const HttpRequest& request, AtDesk at_desk) {
  const auto use = wire::use_scale_from(request.body);
  if (!use) return problems_answer(use.error());
  if (!may_be_used(*use, scale, at_desk)) {
    return problem_answer({.kind = base::ProblemKind::unknown_name,
                           .sentence = "No scale could be at this line.",
                           .place = {.column = "device", .found = use->port.path},
                           .accepted = "one of the lines that are plugged in"});
  }
  scale.use(*use);
  return told_of(scale);
}

HttpResponse armed(ScaleInUse& scale, const HttpRequest& request) {
  const auto asked = wire::hold_next_from(request.body);
  if (!asked) return problems_answer(asked.error());
  if (const auto problem = scale.arm(*asked)) return problem_answer(*problem);
  return told_of(scale);
}

}  // namespace

void add_scale_routes(Routes& routes, workbench::OpenApp& open, AtDesk at_desk) {
  ScaleInUse& scale = open.scale();
  const auto add = [&](const char* method, const char* pattern, auto answer) {
    routes.add(method,
               pattern,
               [&scale, answer](const HttpRequest& request, const PathParameters&) {
                 return answer(scale, request);
               },
               {.does = RouteDoes::reads});  // nothing of a notebook is written
  };
  add("GET", "/api/v1/scale", [](ScaleInUse& at, const HttpRequest& request) {
    return json_answer(wire::scale_to_json(at.told(queried(request, "unit").value_or(""))));
  });
  add("PUT", "/api/v1/scale", [at_desk](ScaleInUse& at, const HttpRequest& request) {
    return used(at, request, at_desk);
  });
  add("DELETE", "/api/v1/scale", [](ScaleInUse& at, const HttpRequest&) {
    at.put_away();
    return told_of(at);
  });
  add("POST", "/api/v1/scale/hold", armed);
}

}  // namespace keenfall::server
