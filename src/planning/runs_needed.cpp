#include "planning/runs_needed.h"

#include "planning/read_scatter.h"
#include "planning/two_sample_chances.h"

#include <algorithm>
#include <utility>

namespace keenfall::planning {

namespace {

using trials::Plan;

Plan with_runs(const Plan& plan, int runs_each) {
  Plan changed = plan;
  changed.runs_each = runs_each;
  changed.runs.clear();
  changed.looks.clear();
  return changed;
}

// The chance with one number after another, each tried once, until the smallest that will do is
// between a number that does not and itself.
class Search {
 public:
  Search(const Plan& plan,
         const Assumptions& assumptions,
         ChancesAsked asked,
         const base::Executor& execute,
         const base::ProgressReport& report)
      : plan_(plan),
        assumptions_(assumptions),
        asked_(std::move(asked)),
        execute_(execute),
        report_(report) {}

  base::Result<RunsNeeded> found_from(int first) {
    int too_few = kFewestRunsEach - 1;
    int enough = kMostRunsNeeded + 1;
    int next = std::clamp(first, kFewestRunsEach, kMostRunsNeeded);
    RunsNeeded needed{.true_ratio = asked_.true_ratios.front(), .trials = asked_.trials};
    for (int step = 1; enough - too_few > 1; step *= 2) {
      const auto chance = settled_with(next);
      if (!chance) return base::failed(chance.error());
      if (chance->probability >= kChanceWanted) {
        enough = next;
        needed.settled = *chance;
      } else {
        too_few = next;
        if (enough > kMostRunsNeeded) needed.settled = *chance;
      }
      next = chance->probability >= kChanceWanted ? std::max(enough - step, too_few + 1)
                                                  : std::min(too_few + step, enough - 1);
    }
    if (enough <= kMostRunsNeeded) needed.runs_each = enough;
    return needed;
  }

 private:
  base::Result<Chance> settled_with(int runs_each) {
    // How many numbers will be tried is not known beforehand; each fills half of what is left.
    const double begun = fraction_;
    fraction_ += 0.5 * (1 - fraction_);
    const auto chances = chances_of(
        with_runs(plan_, runs_each),
        assumptions_,
        asked_,
        execute_,
        [this, begun](const base::Progress& progress) {
          return report_({.fraction_done = begun + progress.fraction_done * (fraction_ - begun),
                          .stage = "looking for the fewest runs"});
        });
    if (!chances) return base::failed(chances.error());
    return chances->at.front().settled;
  }

  const Plan& plan_;
  const Assumptions& assumptions_;
  ChancesAsked asked_;
  const base::Executor& execute_;
  const base::ProgressReport& report_;
  double fraction_ = 0;
};

}  // namespace

base::Result<RunsNeeded> runs_needed(const Plan& plan,
                                     const Assumptions& assumptions,
                                     const ChancesAsked& asked,
                                     double true_ratio,
                                     const base::Executor& execute,
                                     const base::ProgressReport& report) {
  ChancesAsked at_one_ratio = asked;
  at_one_ratio.true_ratios = {true_ratio};
  int first = kFewestRunsEach;
  const auto log_sd = read_scatter(plan, assumptions, asked.cutting);
  if (log_sd && true_ratio > 0 && asked.worth_it_margin > 1) {  // else the first attempt refuses
    first =
        fewest_runs_to_settle(
            {.log_sd = *log_sd, .true_ratio = true_ratio, .worth_it_margin = asked.worth_it_margin},
            kMostRunsNeeded)
            .value_or(kMostRunsNeeded);
  }
  return Search(plan, assumptions, std::move(at_one_ratio), execute, report).found_from(first);
}

}  // namespace keenfall::planning
