// The routes of the scale at the bench: which is in use, what it shows, and the reading it holds.
#include "server/app_parts.h"
#include "server/encoded.h"
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

HttpResponse taken(ScaleInUse& scale, const HttpRequest& request) {
  const auto unit = wire::take_from_scale_from(request.body);
  if (!unit) return problems_answer(unit.error());
  return encoded(scale.take_held(*unit), wire::scale_reading_to_json);
}

}  // namespace

void add_scale_routes(Routes& routes, workbench::OpenApp& open, AtDesk at_desk) {
  ScaleInUse& scale = open.scale();
  routes.add("GET", "/api/v1/scale", [&scale](const HttpRequest&, const PathParameters&) {
    return told_of(scale);
  });
  routes.add(
      "PUT", "/api/v1/scale", [&scale, at_desk](const HttpRequest& request, const PathParameters&) {
        return used(scale, request, at_desk);
      });
  routes.add("DELETE", "/api/v1/scale", [&scale](const HttpRequest&, const PathParameters&) {
    scale.put_away();
    return told_of(scale);
  });
  routes.add(
      "POST", "/api/v1/scale/hold", [&scale](const HttpRequest& request, const PathParameters&) {
        return armed(scale, request);
      });
  routes.add(
      "POST", "/api/v1/scale/take", [&scale](const HttpRequest& request, const PathParameters&) {
        return taken(scale, request);
      });
}

}  // namespace keenfall::server
