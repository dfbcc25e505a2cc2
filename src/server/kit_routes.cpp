// The routes of the kit: what is at hand, and putting in, changing and taking away on each shelf.
#include "server/app_parts.h"
#include "server/encoded.h"
#include "server/meant_notebook.h"
#include "server/told_in.h"
#include "wire/kit_json.h"
#include "workbench/app_kit.h"

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>

namespace keenfall::server {

namespace {

using materials::ToldIn;

HttpResponse kit_answer(const base::Result<notebook::KeptKit>& kit,
                        const ToldIn& told,
                        const std::string& uid = {}) {
  return encoded(
      kit, [&told](const auto& known) { return wire::kit_to_json(known, told); }, uid);
}

HttpResponse changed_answer(const base::Result<workbench::KitAfter>& after,
                            const ToldIn& told,
                            const std::string& uid = {}) {
  return encoded(
      after,
      [&told](const auto& done) { return wire::kit_to_json(done.kit, told, done.remarks); },
      uid);
}

HttpResponse at_hand(workbench::OpenApp& open, const HttpRequest& request, const ToldIn& told) {
  const auto path = notebook_to_read(open, request);
  if (!path) return path.error();
  return kit_answer(workbench::kit_of(*path), told);
}

HttpResponse added(workbench::OpenApp& open,
                   std::size_t shelf,
                   const HttpRequest& request,
                   const ToldIn& told) {
  constexpr int kCreated = 201;
  const auto path = notebook_to_change(open, request);
  if (!path) return path.error();
  const auto thing = wire::kit_thing_from(shelf, request.body);
  if (!thing) return problems_answer(thing.error());
  const auto kit = workbench::kit_with(*path, *thing, open.hand(request.came_at));
  HttpResponse answer = changed_answer(kit, told);
  if (kit) answer.status = kCreated;
  return answer;
}

HttpResponse changed(workbench::OpenApp& open,
                     std::size_t shelf,
                     const std::string& uid,
                     const HttpRequest& request,
                     const ToldIn& told) {
  const auto path = notebook_to_change(open, request);
  if (!path) return path.error();
  auto change = wire::kit_change_from(shelf, request.body);
  if (!change) return problems_answer(change.error());
  const workbench::ThingSeen seen{.shelf = shelf, .uid = uid, .revision = change->revision};
  return changed_answer(
      workbench::kit_changed(
          *path, seen, std::move(change->thing), open.hand(request.came_at, change->why)),
      told,
      uid);
}

base::Problem does_not_say_what_was_seen() {
  return {.kind = base::ProblemKind::missing,
          .sentence = "What is taken away has to be said as it was seen.",
          .place = {.column = "revision"},
          .accepted = "the revision that the kit tells of it"};
}

HttpResponse taken_away(workbench::OpenApp& open,
                        std::size_t shelf,
                        const std::string& uid,
                        const HttpRequest& request,
                        const ToldIn& told) {
  const auto path = notebook_to_change(open, request);
  if (!path) return path.error();
  const auto revision = std::ranges::find(request.query, "revision", &NamedText::name);
  if (revision == request.query.end()) return problem_answer(does_not_say_what_was_seen());
  return kit_answer(workbench::kit_without(*path,
                                           {.shelf = shelf, .uid = uid, .revision = revision->text},
                                           open.hand(request.came_at)),
                    told,
                    uid);
}

}  // namespace

void add_kit_routes(const AppParts& parts) {
  workbench::OpenApp& open = parts.open;
  Routes& routes = parts.routes;
  routes.add("GET",
             "/api/v1/kit",
             telling_in_units([&open](const auto& request, const auto&, const auto& told) {
               return at_hand(open, request, told);
             }));
  for (std::size_t shelf = 0; shelf < wire::kKitShelves.size(); ++shelf) {
    const std::string things = "/api/v1/kit/" + std::string(wire::kKitShelves.at(shelf));
    const std::string thing = things + "/{uid}";
    routes.add("POST",
               things,
               telling_in_units([&open, shelf](const auto& request, const auto&, const auto& told) {
                 return added(open, shelf, request, told);
               }));
    routes.add(
        "PUT",
        thing,
        telling_in_units([&open, shelf](const auto& request, const auto& path, const auto& told) {
          return changed(open, shelf, path.at("uid"), request, told);
        }));
    routes.add(
        "DELETE",
        thing,
        telling_in_units([&open, shelf](const auto& request, const auto& path, const auto& told) {
          return taken_away(open, shelf, path.at("uid"), request, told);
        }));
  }
}

}  // namespace keenfall::server
