// On which constants does an answer hang, and how wide is it over all that are plausible?
//
// One at a time: each constant at both ends of its range, the others as usual. Jointly: every
// constant drawn from its range at once, evenly in logs (evenly where the range begins at 0), by
// seeded Latin hypercubes; the spread of the answers and, for each constant, how the answer's rank
// goes with its own (Spearman). Ranges are plausible, not probable: the spread says what is
// possible, and is no confidence interval. Source: Latin hypercubes, McKay, Beckman & Conover 1979;
// ranks, Iman & Conover 1979 (from memory).
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "base/seed.h"
#include "materials/uncertain_constant.h"
#include "numerics/interval.h"
#include "wear/apex_scenario.h"

#include <functional>
#include <optional>
#include <vector>

namespace keenfall::wear {

// Must give the same for the same scenario; called from several tasks at once.
using ApexAnswer = std::function<std::optional<double>(const ApexScenario&)>;

struct ConstantEffect {
  materials::UncertainConstant constant;
  std::optional<double> answer_at_lo;
  std::optional<double> answer_at_hi;
  double rank_correlation = 0;  // -1 to 1, over the joint draws
};

struct Sensitivity {
  std::optional<double> usual_answer;
  // None: more than 5 % of the draws had no answer. Those are not missing at random (an edge that
  // outlives what was simulated has none), so the rest is no range.
  std::optional<numerics::Interval> joint;
  int draws = 0;
  std::vector<double> answers;          // of the draws that had one, in their order
  int without_answer = 0;               // of the draws
  std::vector<ConstantEffect> effects;  // the strongest rank correlation first
};

struct SensitivityAsked {
  int draws = 200;  // 2 or more
  base::Seed seed;
};

// Fails as interrupted, and where there are too few draws.
[[nodiscard]] base::Result<Sensitivity> sensitivity(
    const ApexScenario& scenario,
    const ApexAnswer& answer,
    const SensitivityAsked& asked,
    const base::Executor& executor,
    const base::ProgressReport& progress = base::unwatched());

}  // namespace keenfall::wear
