// POST /api/v1/tables/read and /take: how tables that were dropped or typed would be taken, and
// taking them.
#include "server/answers.h"
#include "server/app_parts.h"
#include "server/meant_notebook.h"
#include "server/work_routes.h"
#include "wire/tables_json.h"
#include "workbench/table_reading.h"

#include <functional>
#include <memory>
#include <string>
#include <utility>
#include <vector>

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

using Outcome = base::ResultOrProblems<HttpResponse>;

// Of a small table at once, of a large one as work.
HttpResponse answered(const AppParts& parts,
                      const wire::ReadTables& tables,
                      const std::string& words,
                      const std::function<Outcome(const base::ProgressReport&)>& job) {
  if (workbench::is_long_to_read(tables)) {
    return begun_answer(
        parts.works,
        parts.works.start(words, [job](const base::Executor&, const base::ProgressReport& report) {
          return job(report);
        }));
  }
  auto answer = job(base::unwatched());
  return answer ? std::move(*answer) : refusal_of(answer.error());
}

HttpResponse tables_read(const AppParts& parts, const HttpRequest& request) {
  const auto notebook = notebook_if_open(parts.open, request);
  if (!notebook) return notebook.error();
  auto asked = wire::read_tables_from(request.body);
  if (!asked) return problems_answer(asked.error());
  if (notebook->empty() && !asked->trial.empty()) return problem_answer(no_notebook_for_tables());
  const auto tables = std::make_shared<const wire::ReadTables>(std::move(*asked));
  return answered(parts,
                  *tables,
                  "reading the table",
                  [tables, notebook = *notebook](const base::ProgressReport& progress) {
                    return workbench::read_tables(notebook, *tables, progress)
                        .map([](const wire::TablesRead& read) {
                          return json_answer(wire::tables_read_to_json(read));
                        });
                  });
}

HttpResponse tables_taken(const AppParts& parts, const HttpRequest& request) {
  const auto notebook = notebook_to_change(parts.open, request);
  if (!notebook) return notebook.error();
  auto asked = wire::take_tables_from(request.body);
  if (!asked) return problems_answer(asked.error());
  const auto tables = std::make_shared<const wire::TakeTables>(std::move(*asked));
  return answered(parts,
                  tables->read,
                  "taking the table in",
                  [tables, notebook = *notebook, hand = parts.open.hand()](
                      const base::ProgressReport& progress) {
                    return workbench::take_tables_in_hand(notebook, *tables, hand, progress)
                        .map([](const wire::TablesTaken& taken) {
                          return json_answer(wire::tables_taken_to_json(taken));
                        });
                  });
}

}  // namespace

void add_table_routes(const AppParts& parts) {
  parts.routes.add("POST",
                   "/api/v1/tables/read",
                   [parts](const HttpRequest& request, const PathParameters&) {
                     return tables_read(parts, request);
                   },
                   {.body_bytes = kTableBodyBytes, .does = RouteDoes::reads});
  parts.routes.add("POST",
                   "/api/v1/tables/take",
                   [parts](const HttpRequest& request, const PathParameters&) {
                     return tables_taken(parts, request);
                   },
                   {.body_bytes = kTableBodyBytes});
}

}  // namespace keenfall::server
