// POST /api/v1/tables/read and /take: how tables that were dropped or typed would be taken, and
// taking them.
#include "server/answers.h"
#include "server/app_parts.h"
#include "server/meant_notebook.h"
#include "wire/tables_json.h"
#include "workbench/table_reading.h"

namespace keenfall::server {

namespace {

base::Problem no_notebook_for_tables() {
  return {.kind = base::ProblemKind::missing,
          .sentence = "No notebook is open, so there is nothing to take the table into.",
          .accepted = "a notebook: open one, or make one"};
}

// A trial that is not there is a path that leads nowhere, though it stands in the body.
HttpResponse refusal_of(const std::vector<base::Problem>& problems) {
  const base::Problem& first = problems.front();
  const bool is_trial =
      first.kind == base::ProblemKind::unknown_name && first.place.column == "trial";
  return is_trial ? not_found(first.sentence) : problems_answer(problems);
}

HttpResponse tables_read(const AppParts& parts, const HttpRequest& request) {
  const auto notebook = notebook_if_open(parts.open, request);
  if (!notebook) return notebook.error();
  const auto asked = wire::read_tables_from(request.body);
  if (!asked) return problems_answer(asked.error());
  if (notebook->empty() && !asked->trial.empty()) return problem_answer(no_notebook_for_tables());
  const auto read = workbench::read_tables(*notebook, *asked);
  if (!read) return refusal_of(read.error());
  return json_answer(wire::tables_read_to_json(*read));
}

HttpResponse tables_taken(const AppParts& parts, const HttpRequest& request) {
  const auto notebook = notebook_to_change(parts.open, request);
  if (!notebook) return notebook.error();
  const auto asked = wire::take_tables_from(request.body);
  if (!asked) return problems_answer(asked.error());
  const auto taken = workbench::take_tables_in_hand(*notebook, *asked, parts.open.hand());
  if (!taken) return refusal_of(taken.error());
  return json_answer(wire::tables_taken_to_json(*taken));
}

}  // namespace

void add_table_routes(const AppParts& parts) {
  parts.routes.add(
      "POST",
      "/api/v1/tables/read",
      [parts](const HttpRequest& request, const PathParameters&) {
        return tables_read(parts, request);
      },
      kTableBodyBytes);
  parts.routes.add(
      "POST",
      "/api/v1/tables/take",
      [parts](const HttpRequest& request, const PathParameters&) {
        return tables_taken(parts, request);
      },
      kTableBodyBytes);
}

}  // namespace keenfall::server
