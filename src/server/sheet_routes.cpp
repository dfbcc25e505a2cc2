// The routes of sheets that are being typed: having one back, keeping it, forgetting it.
#include "server/app_parts.h"
#include "server/encoded.h"
#include "server/meant_notebook.h"
#include "wire/typed_sheet_json.h"
#include "workbench/kept_sheets.h"

#include <charconv>
#include <cstdint>
#include <string>
#include <utility>

namespace keenfall::server {

namespace {

constexpr const char* kOfANewTrial = "new";

std::string trial_in(const PathParameters& path) {
  const std::string& named = path.at("sheet");
  return named == kOfANewTrial ? "" : named;
}

HttpResponse sheet(workbench::OpenApp& open, const std::string& trial, const HttpRequest& request) {
  const auto path = notebook_to_read(open, request);
  if (!path) return path.error();
  return encoded(workbench::sheet_kept({.notebook = *path, .trial_uid = trial}),
                 wire::typed_sheet_to_json);
}

HttpResponse kept(workbench::OpenApp& open, const std::string& trial, const HttpRequest& request) {
  const auto path = notebook_to_change(open, request);
  if (!path) return path.error();
  auto sheet = wire::sheet_to_keep_from(request.body);
  if (!sheet) return problems_answer(sheet.error());
  return encoded(
      workbench::keep_sheet(
          {.notebook = *path, .trial_uid = trial}, *std::move(sheet), open.hand(request.came_at)),
      wire::kept_sheet_to_json,
      trial);
}

HttpResponse forgotten(workbench::OpenApp& open,
                       const std::string& trial,
                       const HttpRequest& request) {
  const auto path = notebook_to_change(open, request);
  if (!path) return path.error();
  std::string said;
  for (const NamedText& asked : request.query) {
    if (asked.name == "revision") said = asked.text;
  }
  std::int64_t revision = 0;
  const char* const end = said.data() + said.size();
  const auto [stop, fault] = std::from_chars(said.data(), end, revision);
  if (fault != std::errc() || stop != end) {
    return problem_answer({.kind = base::ProblemKind::bad_value,
                           .sentence = "“revision” cannot be used.",
                           .place = {.column = "revision", .found = said},
                           .accepted = "the revision that was seen"});
  }
  return encoded(workbench::forget_sheet(
                     {.notebook = *path, .trial_uid = trial}, revision, open.hand(request.came_at)),
                 wire::kept_sheet_to_json);
}

}  // namespace

void add_sheet_routes(const AppParts& parts) {
  using Answer =
      HttpResponse (*)(workbench::OpenApp&, const std::string& trial, const HttpRequest& request);
  const auto add = [&parts](const char* method, Answer answer) {
    parts.routes.add(
        method,
        "/api/v1/sheets/{sheet}",
        [&open = parts.open, answer](const HttpRequest& request, const PathParameters& path) {
          return answer(open, trial_in(path), request);
        });
  };
  add("GET", sheet);
  add("PUT", kept);
  add("DELETE", forgotten);
}

}  // namespace keenfall::server
