#include "planning/chance_refusals.h"

#include "base/plain_number.h"
#include "planning/imagined_trial.h"
#include "planning/running_flaws.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace keenfall::planning {

namespace {

using trials::Plan;

constexpr int kMostTrials = 100'000;
// Of one cutting, cut once; some 50 MB.
constexpr double kMostImaginedReadings = 250'000;

base::Problem refused(base::ProblemKind kind,
                      const std::string& sentence,
                      const char* field,
                      const std::string& accepted) {
  return {.kind = kind, .sentence = sentence, .place = {.column = field}, .accepted = accepted};
}

std::optional<base::Problem> problem_of_question(const ChancesAsked& asked) {
  using enum base::ProblemKind;
  if (!(asked.worth_it_margin > 1) || asked.worth_it_margin > 100) {
    return refused(bad_value,
                   "The worth-it margin is " + base::plain_number(asked.worth_it_margin) + ".",
                   "worth_it_margin",
                   "a ratio above 1, up to 100; 1.5 is usual");
  }
  for (const double ratio : asked.true_ratios) {
    if (ratio >= 0.01 && ratio <= 100) continue;
    return refused(bad_value,
                   "A true ratio of " + base::plain_number(ratio) + " is out of its range.",
                   "true_ratio",
                   "0.01 to 100");
  }
  if (asked.trials < 1 || asked.trials > kMostTrials) {
    return refused(bad_value,
                   "Chances cannot be told from " + std::to_string(asked.trials) + " trials.",
                   "trials",
                   "1 to " + std::to_string(kMostTrials));
  }
  if (asked.kind.use != trials::ReadingUse::curve) {
    return refused(
        unsuitable_data,
        "No curve is fitted to a " + asked.kind.words + ", so its chances are not known.",
        "kind",
        "a kind of reading with a curve, such as thread_push");
  }
  return std::nullopt;
}

bool rises_from_zero(const std::vector<double>& cuts) {
  return cuts.size() > 1 && cuts.front() == 0 && std::isfinite(cuts.back()) && rises(cuts);
}

std::optional<base::Problem> problem_of_plan(const Plan& plan, const ChancesAsked& asked) {
  using enum base::ProblemKind;
  const bool holds_together = std::ranges::all_of(
      plan.arms, [&plan](const auto& arm) { return arm.cutting < plan.cuttings.size(); });
  if (!holds_together || asked.cutting >= plan.cuttings.size()) {
    return refused(bad_value,
                   "There is no such cutting in the plan.",
                   "cutting",
                   "one of the plan's cuttings");
  }
  const std::vector<trials::Arm> arms = arms_of_cutting(plan, asked.cutting);
  if (arms.size() < 2) {
    return refused(missing,
                   "With one arm there is nothing to compare.",
                   "arms",
                   "two arms or more in one cutting");
  }
  for (auto arm = arms.begin(); arm != arms.end(); ++arm) {
    if (std::count(arms.begin(), arm, *arm) == 0) continue;
    return refused(conflicting,
                   "Two arms are the same: the blade " + arm->blade + " with the same edge.",
                   "arms",
                   "each arm once");
  }
  if (!rises_from_zero(plan.cuttings[asked.cutting].checkpoint_cuts)) {
    return refused(bad_value,
                   "Checkpoints rise from 0, and there are two at least.",
                   "checkpoint_cuts",
                   "0 1 3 7 15 31 63 127, for example");
  }
  if (plan.reading.repeats < 1 || plan.reading.repeats > 100) {
    return refused(bad_value,
                   "A checkpoint is read " + std::to_string(plan.reading.repeats) + " times.",
                   "repeats",
                   "1 to 100");
  }
  const double readings = static_cast<double>(arms.size()) * plan.runs_each * plan.reading.repeats *
                          static_cast<double>(plan.cuttings[asked.cutting].checkpoint_cuts.size());
  if (readings > kMostImaginedReadings) {
    return refused(too_large,
                   "A trial with " + base::plain_number(readings) +
                       " readings in one medium is too large to be cut in imagination again and "
                       "again.",
                   "runs_each",
                   "fewer runs, checkpoints or readings: " +
                       base::plain_number(kMostImaginedReadings) + " in all or fewer");
  }
  return std::nullopt;
}

// Rising, at least 2, and the last no more than there are runs: what a look may be.
std::optional<base::Problem> problem_of_looks(const Plan& plan) {
  if (plan.looks.empty() ||
      (rises(plan.looks) && plan.looks.front() >= 2 && plan.looks.back() <= plan.runs_each)) {
    return std::nullopt;
  }
  return refused(base::ProblemKind::bad_value,
                 "Looks rise from at least 2 runs to at most the runs that are planned.",
                 "looks",
                 "3 and 6, for example, where 6 runs each are planned");
}

}  // namespace

std::optional<base::Problem> why_no_chances(const Plan& plan,
                                            const Assumptions& assumptions,
                                            const ChancesAsked& asked) {
  if (auto problem = problem_of_question(asked)) return problem;
  if (auto problem = problem_of_plan(plan, asked)) return problem;
  if (auto problem = problem_of_looks(plan)) return problem;
  auto problems = problems_of(assumptions, plan);
  if (problems.empty()) return std::nullopt;
  return std::move(problems.front());
}

}  // namespace keenfall::planning
