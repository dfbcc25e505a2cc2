// The routes that judge a trial: quickly at once, fully as long work, and reports of it.
#include "page/report_page.h"
#include "server/app_parts.h"
#include "server/encoded.h"
#include "server/file_answer.h"
#include "server/meant_notebook.h"
#include "server/told_in.h"
#include "server/work_routes.h"
#include "wire/app_requests.h"
#include "wire/judged.h"
#include "wire/report_json.h"
#include "workbench/app_home.h"
#include "workbench/handed_out.h"
#include "workbench/judged_now.h"
#include "workbench/trial_table.h"

#include <string>
#include <utility>
#include <vector>

namespace keenfall::server {

namespace {

using materials::ToldIn;
using workbench::TrialToJudge;
using WorkOutcome = base::ResultOrProblems<HttpResponse>;

HttpResponse begun(const AppParts& parts, const std::string& words, LongWork work) {
  return begun_answer(parts.works, parts.works.start(words, std::move(work)));
}

HttpResponse judged_as_work(const AppParts& parts, TrialToJudge asked, bool is_quick) {
  workbench::OpenApp& open = parts.open;
  return begun(parts,
               "judging the trial",
               [&open, is_quick, asked = std::move(asked)](const base::Executor& executor,
                                                           const base::ProgressReport& progress) {
                 auto& at_hand = open.at_hand();
                 return (is_quick ? workbench::judge_quickly(at_hand, asked, progress)
                                  : workbench::judge_fully(at_hand, asked, executor, progress))
                     .map([](const wire::Judged& judged) {
                       return json_answer(wire::judged_to_json(judged));
                     });
               });
}

HttpResponse judged_fully(const AppParts& parts, TrialToJudge asked) {
  const auto again = workbench::judge_again(parts.open.at_hand(), asked);
  if (!again)
    return encoded(
        again, [](const auto&) { return std::string(); }, asked.uid);
  if (*again) return json_answer(wire::judged_to_json(**again));
  return judged_as_work(parts, std::move(asked), false);
}

HttpResponse judged(const AppParts& parts,
                    const std::string& uid,
                    const HttpRequest& request,
                    const ToldIn& told) {
  const auto path = notebook_to_change(parts.open, request);
  if (!path) return path.error();
  const auto judging = wire::judging_from(request.body);
  if (!judging) return problems_answer(judging.error());
  TrialToJudge asked{.notebook = *path,
                     .uid = uid,
                     .question = judging->question,
                     .by = parts.open.judged_by(),
                     .told_in = told};
  const auto seen = parts.open.at_hand().trials.trial(*path, uid);
  if (!seen)
    return encoded(
        seen, [](const auto&) { return std::string(); }, uid);
  if (workbench::is_long_to_judge(*(*seen)->trial)) {
    return judged_as_work(parts, std::move(asked), judging->is_quick);
  }
  if (!judging->is_quick) return judged_fully(parts, std::move(asked));
  // Whoever asks quickly and could have the full answer as quickly has that.
  if (const auto again = workbench::judge_again(parts.open.at_hand(), asked); again && *again) {
    return json_answer(wire::judged_to_json(**again));
  }
  return encoded(workbench::judge_quickly(parts.open.at_hand(), asked, base::unwatched()),
                 wire::judged_to_json,
                 uid);
}

MadeFile report_file(const wire::Judged& judged, wire::ReportFormat format) {
  const telling::Report& report = judged.report;
  if (format == wire::ReportFormat::json) {
    return {.name = report.title + ".json",
            .content_type = "application/json",
            .bytes = wire::report_to_json(report)};
  }
  return {.name = report.title + ".html",
          .content_type = "text/html; charset=utf-8",
          .bytes = page::report_page(report, workbench::trial_table(report.trial).csv)};
}

// A table is not judged.
WorkOutcome table_file(workbench::OpenApp& open, const TrialToJudge& asked) {
  const auto table =
      workbench::handed_out(open.at_hand(),
                            {.notebook = asked.notebook,
                             .request = {.as = wire::ExportAs::csv, .trial = asked.uid},
                             .program_version = asked.by.program_version});
  if (!table) return base::failed_by(table.error());
  return file_answer(
      {.name = table->file_name, .content_type = "text/csv; charset=utf-8", .bytes = table->bytes});
}

// For programs all is told as it was recorded.
HttpResponse reported(const AppParts& parts,
                      const std::string& uid,
                      const HttpRequest& http,
                      const ToldIn& told) {
  const auto path = notebook_to_change(parts.open, http);
  if (!path) return path.error();
  const auto request = wire::report_request_from(http.body);
  if (!request) return problems_answer(request.error());
  workbench::OpenApp& open = parts.open;
  const auto seen = open.at_hand().trials.trial(*path, uid);
  if (!seen)
    return encoded(
        seen, [](const auto&) { return std::string(); }, uid);
  TrialToJudge asked{.notebook = *path,
                     .uid = uid,
                     .question = request->question,
                     .by = open.judged_by(),
                     .told_in = request->format == wire::ReportFormat::html ? told : ToldIn{}};
  return begun(
      parts,
      "writing the report",
      [&open, asked = std::move(asked), format = request->format](
          const base::Executor& executor, const base::ProgressReport& progress) -> WorkOutcome {
        if (format == wire::ReportFormat::csv) return table_file(open, asked);
        return workbench::judge_fully(open.at_hand(), asked, executor, progress)
            .map([format](const wire::Judged& made) {
              return file_answer(report_file(made, format));
            });
      });
}

HttpResponse answered(const AppParts& parts,
                      const std::string& uid,
                      const HttpRequest& request,
                      const ToldIn& told) {
  const auto path = notebook_to_read(parts.open, request);
  if (!path) return path.error();
  return encoded(workbench::newest_answer(parts.open.at_hand(),
                                          {.notebook = *path,
                                           .uid = uid,
                                           .question = {},
                                           .by = parts.open.judged_by(),
                                           .told_in = told}),
                 wire::answer_to_json,
                 uid);
}

}  // namespace

void add_judging_routes(const AppParts& parts) {
  parts.routes.add(
      "GET",
      "/api/v1/trials/{trial}/answer",
      telling_in_units([parts](const auto& request, const auto& path, const auto& told) {
        return answered(parts, path.at("trial"), request, told);
      }));
  parts.routes.add(
      "POST",
      "/api/v1/trials/{trial}/judgements",
      telling_in_units([parts](const auto& request, const auto& path, const auto& told) {
        return judged(parts, path.at("trial"), request, told);
      }));
  parts.routes.add(
      "POST",
      "/api/v1/trials/{trial}/reports",
      telling_in_units([parts](const auto& request, const auto& path, const auto& told) {
        return reported(parts, path.at("trial"), request, told);
      }));
}

}  // namespace keenfall::server
