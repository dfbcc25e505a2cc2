// The routes of a plan that is being written: its arms, checkpoints and order, what it costs, what
// it can find out (roughly at once, better as long work), and what was measured before.
#include "server/app_parts.h"
#include "server/encoded.h"
#include "server/meant_notebook.h"
#include "server/told_in.h"
#include "server/work_routes.h"
#include "wire/planning_json.h"
#include "wire/planning_requests.h"
#include "workbench/measured_before.h"
#include "workbench/plan_in_hand.h"
#include "workbench/plan_prospects.h"

#include <functional>
#include <string>
#include <utility>

namespace keenfall::server {

namespace {

using materials::ToldIn;
using workbench::PlanInHand;

HttpResponse arms_planned(const std::string& body, const ToldIn& told) {
  const auto asked = wire::arms_asked_from(body);
  if (!asked) return problems_answer(asked.error());
  return encoded(workbench::planned_arms(*asked),
                 [&told](const auto& arms) { return wire::planned_arms_to_json(arms, told); });
}

HttpResponse checkpoints_suggested(const std::string& body) {
  const auto asked = wire::checkpoints_asked_from(body);
  if (!asked) return problems_answer(asked.error());
  return encoded(suggested_checkpoints(*asked), wire::checkpoints_to_json);
}

HttpResponse put_in_order(const std::string& notebook,
                          const std::string& body,
                          const ToldIn& told) {
  const auto plan = wire::plan_from_request(body);
  if (!plan) return problems_answer(plan.error());
  const auto kit = workbench::kit_to_plan_with(notebook);
  if (!kit) return problem_answer(kit.error());
  return encoded(workbench::in_shuffled_order(*plan, *kit),
                 [&told](const auto& ordered) { return wire::plan_to_json(ordered, told); });
}

HttpResponse own_scatter_planned(const std::string& notebook, const std::string& body) {
  const auto asked = wire::own_scatter_asked_from(body);
  if (!asked) return problems_answer(asked.error());
  const auto kit = workbench::kit_to_plan_with(notebook);
  if (!kit) return problem_answer(kit.error());
  return json_answer(wire::made_plan_to_json(workbench::plan_of_own_scatter(*asked, *kit)));
}

struct PlanLookedAt {
  PlanInHand plan;
  bool is_rough = false;
};

base::ResultOrProblems<PlanLookedAt> plan_looked_at(const std::string& notebook,
                                                    const std::string& body) {
  const auto asked = wire::plan_asked_from(body);
  if (!asked) return tl::unexpected(asked.error());
  const auto kit = workbench::kit_to_plan_with(notebook);
  if (!kit) return base::failed_by(kit.error());
  auto in_hand = workbench::plan_in_hand(*asked, *kit);
  if (!in_hand) return tl::unexpected(std::move(in_hand.error()));
  return PlanLookedAt{.plan = *std::move(in_hand), .is_rough = asked->is_rough};
}

HttpResponse cost_counted(const std::string& notebook,
                          const std::string& body,
                          const ToldIn& told) {
  const auto looked_at = plan_looked_at(notebook, body);
  if (!looked_at) return problems_answer(looked_at.error());
  wire::CostTold cost = workbench::cost_told(looked_at->plan);
  cost.told_in = told;
  return json_answer(wire::cost_to_json(cost));
}

// What cannot be imagined is refused at once, not when the work has begun: the rough answer has
// the same refusals.
HttpResponse chances_found(Works& works, const std::string& notebook, const std::string& body) {
  auto looked_at = plan_looked_at(notebook, body);
  if (!looked_at) return problems_answer(looked_at.error());
  const auto rough = workbench::rough_chances_told(looked_at->plan);
  if (!rough || looked_at->is_rough || rough->cuttings.empty()) {
    return encoded(rough, wire::chances_to_json);
  }
  const auto work =
      [plan = std::move(looked_at->plan)](
          const base::Executor& execute,
          const base::ProgressReport& report) -> base::ResultOrProblems<HttpResponse> {
    const auto told = workbench::chances_told(plan, {}, execute, report);
    if (!told) return base::failed_by(told.error());
    return json_answer(wire::chances_to_json(*told));
  };
  return begun_answer(works, works.start("working the chances out", work));
}

// Nothing where no notebook is open.
HttpResponse measured(workbench::OpenApp& open, const HttpRequest& request, const ToldIn& told) {
  const auto path = notebook_if_open(open, request);
  if (!path) return path.error();
  if (path->empty()) return json_answer(wire::measured_to_json({}));
  return encoded(workbench::measured_before(
                     open.at_hand(), {.notebook = *path, .by = open.judged_by(), .told_in = told}),
                 wire::measured_to_json);
}

}  // namespace

// Of the open notebook's kit; without one a plan can be looked at all the same.
void add_planning_routes(const AppParts& parts) {
  using Answer = std::function<HttpResponse(
      const std::string& notebook, const std::string& body, const ToldIn& told)>;
  const auto add = [&parts](const std::string& what, Answer answer) {
    parts.routes.add("POST",
                     "/api/v1/planning/" + what,
                     telling_in_units([&open = parts.open, answer = std::move(answer)](
                                          const auto& request, const auto&, const auto& told) {
                       const auto notebook = notebook_if_open(open, request);
                       return notebook ? answer(*notebook, request.body, told) : notebook.error();
                     }),
                     {.does = RouteDoes::reads});
  };
  add("arms", [](const std::string&, const std::string& body, const ToldIn& told) {
    return arms_planned(body, told);
  });
  add("checkpoints", [](const std::string&, const std::string& body, const ToldIn&) {
    return checkpoints_suggested(body);
  });
  add("order", put_in_order);
  add("cost", cost_counted);
  add("chances",
      [&works = parts.works](const std::string& notebook, const std::string& body, const ToldIn&) {
        return chances_found(works, notebook, body);
      });
  add("own-scatter", [](const std::string& notebook, const std::string& body, const ToldIn&) {
    return own_scatter_planned(notebook, body);
  });
  parts.routes.add(
      "GET",
      "/api/v1/planning/measured",
      telling_in_units([&open = parts.open](const auto& request, const auto&, const auto& told) {
        return measured(open, request, told);
      }));
}

}  // namespace keenfall::server
