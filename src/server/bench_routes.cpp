// The routes of the bench: a trial's runs there, beginning one, how it stands, and what is tapped.
#include "server/app_parts.h"
#include "server/encoded.h"
#include "server/meant_notebook.h"
#include "server/told_in.h"
#include "wire/bench_page.h"
#include "wire/bench_to_cut.h"
#include "workbench/bench_book.h"
#include "workbench/bench_to_cut.h"

#include <string>
#include <utility>

namespace keenfall::server {

namespace {

using materials::ToldIn;

auto run_told_in(const ToldIn& told) {
  return [told](const wire::BenchRunTold& run) { return wire::bench_run_to_json(run, told); };
}

HttpResponse bench(workbench::OpenApp& open,
                   const std::string& uid,
                   const HttpRequest& request,
                   const ToldIn&) {
  const auto path = notebook_to_read(open, request);
  if (!path) return path.error();
  return encoded(workbench::bench_of(open.at_hand(), {.notebook = *path, .uid = uid}),
                 wire::bench_to_json,
                 uid);
}

HttpResponse begun(workbench::OpenApp& open,
                   const std::string& uid,
                   const HttpRequest& request,
                   const ToldIn& told) {
  const auto path = notebook_to_change(open, request);
  if (!path) return path.error();
  const auto begin = wire::begin_bench_run_from(request.body);
  if (!begin) return problems_answer(begin.error());
  return encoded(
      workbench::begin_at_bench(
          open.at_hand(), {.notebook = *path, .uid = uid}, *begin, open.hand(request.came_at)),
      run_told_in(told),
      uid);
}

HttpResponse run(workbench::OpenApp& open,
                 const std::string& uid,
                 const HttpRequest& request,
                 const ToldIn& told) {
  const auto path = notebook_to_read(open, request);
  if (!path) return path.error();
  return encoded(workbench::run_at_bench(open.at_hand(), {.notebook = *path, .uid = uid}),
                 run_told_in(told),
                 uid);
}

HttpResponse kept(workbench::OpenApp& open,
                  const std::string& uid,
                  const HttpRequest& request,
                  const ToldIn& told) {
  const auto path = notebook_to_change(open, request);
  if (!path) return path.error();
  auto entries = wire::bench_entries_from(request.body);
  if (!entries) return problems_answer(entries.error());
  return encoded(open.bench_book().keep(
                     open.at_hand(),
                     {.run = {.notebook = *path, .uid = uid}, .entries = *std::move(entries)},
                     open.hand(request.came_at)),
                 run_told_in(told),
                 uid);
}

HttpResponse looked_at(workbench::OpenApp& open,
                       const std::string& uid,
                       const HttpRequest& request,
                       const ToldIn&) {
  const auto path = notebook_to_read(open, request);
  if (!path) return path.error();
  const auto typed = wire::typed_reading_from(request.body);
  if (!typed) return problems_answer(typed.error());
  return encoded(
      workbench::is_worth_a_second_look(open.at_hand(), {.notebook = *path, .uid = uid}, *typed),
      wire::look_again_to_json,
      uid);
}

}  // namespace

void add_bench_routes(Routes& routes, workbench::OpenApp& open_app, AtDesk at_desk) {
  using Answer = HttpResponse (*)(
      workbench::OpenApp&, const std::string& uid, const HttpRequest& request, const ToldIn& told);
  const auto add = [&routes, &open_app](const char* method,
                                        const std::string& pattern,
                                        const std::string& named,
                                        Answer answer,
                                        const RouteRules& rules = {}) {
    routes.add(method,
               pattern,
               telling_in_units([&open_app, named, answer](
                                    const auto& request, const auto& path, const auto& told) {
                 return answer(open_app, path.at(named), request, told);
               }),
               rules);
  };
  routes.add(
      "GET", "/api/v1/bench", [&open_app, at_desk](const HttpRequest&, const PathParameters&) {
        return encoded(workbench::bench_to_cut(open_app, at_desk == AtDesk::yes),
                       wire::bench_to_cut_to_json);
      });
  add("GET", "/api/v1/trials/{trial}/bench", "trial", bench);
  add("POST", "/api/v1/trials/{trial}/bench", "trial", begun);
  add("GET", "/api/v1/bench/{run}", "run", run);
  add("POST", "/api/v1/bench/{run}", "run", kept);
  add("POST", "/api/v1/bench/{run}/look", "run", looked_at, {.does = RouteDoes::reads});
}

}  // namespace keenfall::server
