// A plan that is being written in the app, made ready to be looked at: without flaws, and with all
// that is assumed of it filled in; its runs put in order; a plan made for somebody.
//
// Blades need not be in the kit yet, and claims need no more than their margin: those are looked at
// when the plan is sealed.
#pragma once

#include "base/result.h"
#include "planning/assumptions.h"
#include "planning/cost.h"
#include "trials/kit.h"
#include "trials/plan.h"
#include "wire/planning_json.h"
#include "wire/planning_requests.h"

#include <string>
#include <vector>

namespace keenfall::workbench {

struct PlanInHand {
  trials::Plan plan;  // without runs where they were not in order
  planning::Assumptions assumptions;
  planning::BenchTimes bench_times;
  trials::ReadingKind kind;           // that is read
  std::vector<trials::Blade> blades;  // of the kit
  double worth_it_margin = 1.5;       // of the first claim, else the usual
};

// Fails with every problem at once, named by the field of the request.
[[nodiscard]] base::ResultOrProblems<PlanInHand> plan_in_hand(const wire::PlanAsked& asked,
                                                              const trials::Kit& kit);

// The kit that plans are made from. notebook: its path; empty where none is open, and then the kit
// is empty. Fails as notebook_opening.h does.
[[nodiscard]] base::Result<trials::Kit> kit_to_plan_with(const std::string& notebook);

[[nodiscard]] base::Result<std::vector<trials::PlannedArm>> planned_arms(
    const wire::ArmsAsked& asked);

// The plan with its runs in shuffled order.
[[nodiscard]] base::Result<trials::Plan> in_shuffled_order(trials::Plan plan,
                                                           const trials::Kit& kit);

// The plan by which one's own repeatability is measured, and what it claims.
[[nodiscard]] wire::MadePlan plan_of_own_scatter(const wire::OwnScatterAsked& asked,
                                                 const trials::Kit& kit);

}  // namespace keenfall::workbench
