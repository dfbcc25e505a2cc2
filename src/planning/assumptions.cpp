#include "planning/assumptions.h"

#include "base/plain_number.h"
#include "base/require.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace keenfall::planning {

namespace {

using trials::Plan;

UsualScatter between(double least, double most) {
  return {.least = least, .usual = 0.5 * (least + most), .most = most};
}

// One number, the least and the most it may be.
struct Bounded {
  const char* words;
  const char* field;
  double number;
  double least;
  double most;
};

void hold_between(std::vector<base::Problem>& problems, const Bounded& bounded) {
  if (bounded.number >= bounded.least && bounded.number <= bounded.most) return;
  problems.push_back(
      {.kind = base::ProblemKind::bad_value,
       .sentence = std::string(bounded.words) + " is assumed to be " +
                   base::plain_number(bounded.number) + ", which is out of its range.",
       .place = {.column = bounded.field},
       .accepted = base::plain_number(bounded.least) + " to " + base::plain_number(bounded.most)});
}

}  // namespace

UsualScatter usual_run_scatter(Care care) {
  switch (care) {
    case Care::guided_one_lot:
      return between(0.12, 0.20);
    case Care::careful_freehand:
      return between(0.20, 0.30);
    case Care::gritty_stock:
      return between(0.30, 0.40);
    case Care::mixed_days:
      break;
  }
  return between(0.35, 0.50);
}

std::string_view in_words(Care care) {
  switch (care) {
    case Care::guided_one_lot:
      return "guided angle, one hand, one lot";
    case Care::careful_freehand:
      return "careful freehand";
    case Care::gritty_stock:
      return "gritty stock";
    case Care::mixed_days:
      break;
  }
  return "mixed days or lots, without blocks";
}

double half_keenness_looked_for(std::span<const double> checkpoint_cuts) {
  std::vector<double> after_start;
  std::ranges::copy_if(checkpoint_cuts, std::back_inserter(after_start), [](double cuts) {
    return cuts > 0 && std::isfinite(cuts);
  });
  if (after_start.empty()) return ExpectedCutting{}.half_keenness_cuts;
  const std::size_t count = after_start.size();
  if (count < 4) return after_start[(count - 1) / 2];
  return std::sqrt(after_start[count - 4] * after_start[count - 3]);
}

Assumptions usual_assumptions(const Plan& plan) {
  Assumptions assumptions;
  for (const trials::PlannedCutting& cutting : plan.cuttings) {
    assumptions.cuttings.push_back(
        {.half_keenness_cuts = half_keenness_looked_for(cutting.checkpoint_cuts)});
  }
  if (plan.start_gate && plan.start_gate->target_reading > 0) {
    assumptions.start_reading = plan.start_gate->target_reading;
  }
  return assumptions;
}

std::vector<base::Problem> problems_of(const Assumptions& assumptions, const Plan& plan) {
  std::vector<base::Problem> problems;
  if (assumptions.cuttings.size() != plan.cuttings.size()) {
    problems.push_back(
        {.kind = base::ProblemKind::conflicting,
         .sentence = "Something is assumed of " + std::to_string(assumptions.cuttings.size()) +
                     " cuttings, and the plan has " + std::to_string(plan.cuttings.size()) + ".",
         .place = {.column = "assumptions"},
         .accepted = "one expected half keenness and one scatter for each cutting"});
  }
  for (const ExpectedCutting& cutting : assumptions.cuttings) {
    hold_between(problems,
                 {"Half keenness", "half_keenness_cuts", cutting.half_keenness_cuts, 1e-3, 1e7});
    hold_between(problems, {"The shape of the curve", "shape", cutting.shape, 0.2, 2});
    hold_between(problems,
                 {"The scatter from run to run", "run_log_sd", cutting.run_log_sd, 0.01, 2});
  }
  hold_between(problems, {"The true ratio", "true_ratio", assumptions.true_ratio, 0.01, 100});
  hold_between(problems,
               {"The start reading", "start_reading", assumptions.start_reading, 1e-6, 1e9});
  hold_between(problems, {"The scatter of starts", "start_log_sd", assumptions.start_log_sd, 0, 1});
  hold_between(problems, {"The scatter of blocks", "block_log_sd", assumptions.block_log_sd, 0, 1});
  hold_between(problems,
               {"The scatter of pieces", "specimen_log_sd", assumptions.specimen_log_sd, 0, 1});
  hold_between(problems,
               {"The scatter of the spots read", "spot_log_sd", assumptions.spot_log_sd, 0, 1});
  hold_between(
      problems,
      {"The scatter of one reading", "reading_log_sd", assumptions.reading_log_sd, 0.001, 1});
  return problems;
}

blunting::LogLogistic expected_curve(const Plan& plan,
                                     const Assumptions& assumptions,
                                     std::size_t arm) {
  base::require(arm < plan.arms.size() && plan.arms[arm].cutting < assumptions.cuttings.size(),
                "an arm of the plan, in a cutting of which something is assumed");
  const std::size_t cutting = plan.arms[arm].cutting;
  std::size_t place = 0;
  std::size_t count = 0;
  for (std::size_t a = 0; a < plan.arms.size(); ++a) {
    if (plan.arms[a].cutting != cutting) continue;
    if (a < arm) ++place;
    ++count;
  }
  // From 1/2 for the first arm of the cutting to -1/2 for the last.
  const double from_middle =
      count > 1 ? 0.5 - static_cast<double>(place) / static_cast<double>(count - 1) : 0;
  const ExpectedCutting& expected = assumptions.cuttings[cutting];
  return {.log_start = std::log(assumptions.start_reading),
          .log_half_keenness = std::log(expected.half_keenness_cuts) +
                               from_middle * std::log(assumptions.true_ratio),
          .shape = expected.shape};
}

}  // namespace keenfall::planning
