#include "planned_requests.h"

#include "wire/planning_json.h"
#include "wire/planning_requests.h"
#include "workbench/plan_in_hand.h"
#include "workbench/plan_prospects.h"

#include <cmath>
#include <cstdlib>

namespace keenfall::fuzz {

namespace {

void must_hold(bool condition) {
  if (!condition) std::abort();
}

void put_in_order(const std::string& body) {
  const auto plan = wire::plan_from_request(body);
  if (!plan) return;
  const auto again = wire::plan_from_request(wire::plan_to_json(*plan));
  must_hold(again && again->arms.size() == plan->arms.size() && again->cuttings == plan->cuttings &&
            again->runs.size() == plan->runs.size());
  if (const auto shuffled = workbench::in_shuffled_order(*plan, {})) {
    must_hold(shuffled->runs.size() ==
              plan->arms.size() * static_cast<std::size_t>(plan->runs_each));
  }
}

void look_at(const std::string& body) {
  const auto asked = wire::plan_asked_from(body);
  if (!asked) return;
  const auto plan = workbench::plan_in_hand(*asked, {});
  if (!plan) return;
  (void)wire::cost_to_json(workbench::cost_told(*plan));
  const auto told = workbench::rough_chances_told(*plan);
  if (!told) return;
  for (const wire::ChancesInCutting& in : told->cuttings) {
    for (const planning::ChancesAt& at : in.chances.at) {
      double sum = 0;
      for (const planning::Chance& chance : at.verdicts) sum += chance.probability;
      must_hold(std::abs(sum - 1) < 1e-6);
    }
  }
  (void)wire::chances_to_json(*told);
}

}  // namespace

void plan_as_asked(std::string_view path, const std::string& body) {
  constexpr std::string_view kPlanning = "/api/v1/planning/";
  if (!path.starts_with(kPlanning)) return;
  const std::string_view what = path.substr(kPlanning.size());
  if (what == "arms") {
    const auto asked = wire::arms_asked_from(body);
    const auto arms =
        asked ? workbench::planned_arms(*asked) : base::Result<std::vector<trials::PlannedArm>>{};
    if (arms) (void)wire::planned_arms_to_json(*arms);
  } else if (what == "checkpoints") {
    const auto asked = wire::checkpoints_asked_from(body);
    if (!asked) return;
    if (const auto cuts = suggested_checkpoints(*asked)) (void)wire::checkpoints_to_json(*cuts);
  } else if (what == "order") {
    put_in_order(body);
  } else if (what == "own-scatter") {
    const auto asked = wire::own_scatter_asked_from(body);
    if (asked) (void)wire::made_plan_to_json(workbench::plan_of_own_scatter(*asked, {}));
  } else {
    look_at(body);
  }
}

}  // namespace keenfall::fuzz
