// The routes of the reference tables, and of handing the notebook out.
#include "server/app_parts.h"
#include "server/encoded.h"
#include "server/file_answer.h"
#include "server/meant_notebook.h"
#include "server/work_routes.h"
#include "wire/app_requests.h"
#include "workbench/handed_out.h"
#include "workbench/reference_rows.h"

#include <string>
#include <utility>

namespace keenfall::server {

namespace {

base::ResultOrProblems<HttpResponse> handed_out_file(workbench::OpenApp& open,
                                                     const workbench::HandOutRequest& request) {
  auto made = workbench::handed_out(open.at_hand(), request);
  if (!made) return base::failed_by(made.error());
  const bool is_table = request.request.as == wire::ExportAs::csv;
  return file_answer({.name = std::move(made->file_name),
                      .content_type = is_table ? "text/csv; charset=utf-8" : "application/json",
                      .bytes = std::move(made->bytes)});
}

HttpResponse exported(const AppParts& parts, const HttpRequest& http) {
  const auto path = notebook_to_read(parts.open, http);
  if (!path) return path.error();
  const auto request = wire::export_request_from(http.body);
  if (!request) return problems_answer(request.error());
  workbench::OpenApp& open = parts.open;
  workbench::HandOutRequest wanted{
      .notebook = *path, .request = *request, .program_version = open.settings().program_version};
  const std::string id = parts.works.start(
      "handing the notebook out",
      [&open, wanted = std::move(wanted)](const base::Executor&, const base::ProgressReport&) {
        return handed_out_file(open, wanted);
      });
  return begun_answer(parts.works, id);
}

}  // namespace

void add_reference_routes(const AppParts& parts) {
  parts.routes.add(
      "GET", "/api/v1/reference/steels", [](const HttpRequest& request, const PathParameters&) {
        return json_answer(
            wire::steels_to_json(workbench::steels_like(queried(request, "text").value_or(""))));
      });
  parts.routes.add(
      "GET", "/api/v1/reference/grits", [](const HttpRequest& request, const PathParameters&) {
        return json_answer(
            wire::grits_to_json(workbench::grits_like(queried(request, "text").value_or(""))));
      });
  parts.routes.add("POST",
                   "/api/v1/export",
                   [parts](const HttpRequest& request, const PathParameters&) {
                     return exported(parts, request);
                   },
                   {.does = RouteDoes::reads});
}

}  // namespace keenfall::server
