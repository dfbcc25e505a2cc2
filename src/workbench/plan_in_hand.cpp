#include "workbench/plan_in_hand.h"

#include "notebook/kit.h"
#include "planning/crossed_arms.h"
#include "planning/own_repeatability.h"
#include "planning/plan_flaws.h"
#include "planning/shuffled_order.h"
#include "workbench/notebook_opening.h"

#include <algorithm>
#include <optional>
#include <utility>

namespace keenfall::workbench {

namespace {

using Problems = std::vector<base::Problem>;
using Said = std::vector<std::optional<double>>;

// Problems of a part of the request, by the names its fields have there.
void add_named_within(Problems& all, const std::string& part, Problems problems) {
  for (base::Problem& problem : problems) {
    problem.place.column = part + "." + problem.place.column;
    all.push_back(std::move(problem));
  }
}

// An order that does not belong to the plan any more is none: what it is looked at for is shuffled
// anew, and whoever seals it is told.
Problems flaws_but_of_order(trials::Plan& plan, const trials::Kit& kit) {
  const std::vector<trials::Claim> claim{{.words = "what is planned"}};
  const trials::Kit without_blades{.kinds = kit.kinds};
  Problems flaws = planning::plan_flaws(plan, claim, without_blades, planning::purpose_of(plan));
  const auto is_of_order = [](const base::Problem& flaw) { return flaw.place.column == "runs"; };
  if (std::erase_if(flaws, is_of_order) > 0) plan.runs.clear();
  return flaws;
}

// Each that was said in the place of the usual one.
template <class Field>
void assume_in_each(planning::Assumptions& assumptions,
                    const Said& said,
                    Field planning::ExpectedCutting::*field) {
  for (std::size_t c = 0; c < said.size() && c < assumptions.cuttings.size(); ++c) {
    if (said[c]) assumptions.cuttings[c].*field = *said[c];
  }
}

void take(double& assumed, const std::optional<double>& said) { assumed = said.value_or(assumed); }

planning::Assumptions assumed_of(const trials::Plan& plan, const wire::SaidAssumptions& said) {
  planning::Assumptions assumptions = planning::usual_assumptions(plan);
  assume_in_each(
      assumptions, said.half_keenness_cuts, &planning::ExpectedCutting::half_keenness_cuts);
  assume_in_each(assumptions, said.run_log_sd, &planning::ExpectedCutting::run_log_sd);
  for (planning::ExpectedCutting& cutting : assumptions.cuttings) take(cutting.shape, said.shape);
  take(assumptions.true_ratio, said.true_ratio);
  take(assumptions.start_reading, said.start_reading);
  take(assumptions.start_log_sd, said.start_log_sd);
  take(assumptions.block_log_sd, said.block_log_sd);
  take(assumptions.specimen_log_sd, said.specimen_log_sd);
  take(assumptions.spot_log_sd, said.spot_log_sd);
  take(assumptions.reading_log_sd, said.reading_log_sd);
  return assumptions;
}

// Where something is said of each cutting, it is said of as many as there are.
void add_of_number(Problems& problems, const char* field, const Said& said, std::size_t cuttings) {
  if (said.empty() || said.size() == cuttings) return;
  problems.push_back({.kind = base::ProblemKind::conflicting,
                      .sentence = "Something is assumed of " + std::to_string(said.size()) +
                                  " ways of cutting, and the plan has " + std::to_string(cuttings) +
                                  ".",
                      .place = {.column = field},
                      .accepted = "one number for each of them, or null for the usual"});
}

}  // namespace

base::ResultOrProblems<PlanInHand> plan_in_hand(const wire::PlanAsked& asked,
                                                const trials::Kit& kit) {
  PlanInHand in_hand{.plan = asked.plan, .bench_times = asked.bench_times, .blades = kit.blades};
  Problems problems;
  add_named_within(problems, "plan", flaws_but_of_order(in_hand.plan, kit));
  in_hand.assumptions = assumed_of(in_hand.plan, asked.assumptions);
  Problems of_assumptions = problems_of(in_hand.assumptions, in_hand.plan);
  const std::size_t cuttings = in_hand.plan.cuttings.size();
  add_of_number(
      of_assumptions, "half_keenness_cuts", asked.assumptions.half_keenness_cuts, cuttings);
  add_of_number(of_assumptions, "run_log_sd", asked.assumptions.run_log_sd, cuttings);
  add_named_within(problems, "assumptions", std::move(of_assumptions));
  add_named_within(problems, "bench_times", problems_of(in_hand.bench_times));
  if (!problems.empty()) return tl::unexpected<Problems>(std::move(problems));
  in_hand.kind = *planning::kind_read(in_hand.plan, kit);
  if (!asked.claims.empty()) in_hand.worth_it_margin = asked.claims.front().worth_it_margin;
  return in_hand;
}

base::Result<trials::Kit> kit_to_plan_with(const std::string& notebook) {
  if (notebook.empty()) return trials::Kit{};
  return naming_the_file(notebook, [&]() -> base::Result<trials::Kit> {
    const auto opened = opened_to_read(notebook);
    if (!opened) return base::failed(opened.error());
    return things_of(notebook::kept_kit(*opened));
  });
}

base::Result<std::vector<trials::PlannedArm>> planned_arms(const wire::ArmsAsked& asked) {
  planning::ArmChoices choices = asked.choices;
  if (asked.edge_choices) {
    auto edges = planning::crossed_edges(*asked.edge_choices);
    if (!edges) return base::failed(std::move(edges.error()));
    choices.edges = *std::move(edges);
  }
  return asked.crossed ? planning::crossed_arms(choices) : planning::best_against_best(choices);
}

base::Result<trials::Plan> in_shuffled_order(trials::Plan plan, const trials::Kit& kit) {
  auto runs = planning::shuffled_order(plan, kit.blades);
  if (!runs) return base::failed(std::move(runs.error()));
  plan.runs = *std::move(runs);
  return plan;
}

wire::MadePlan plan_of_own_scatter(const wire::OwnScatterAsked& asked, const trials::Kit& kit) {
  planning::OwnRepeatability with{.blade = asked.blade, .medium = {.name = asked.medium}};
  const auto known = std::ranges::find(kit.media, asked.medium, &trials::Medium::name);
  if (known != kit.media.end()) with.medium = *known;
  return {.plan = planning::own_repeatability_plan(with),
          .claim = planning::own_repeatability_claim(with)};
}

}  // namespace keenfall::workbench
