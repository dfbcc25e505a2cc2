#include "planning/rough_chances.h"

#include "base/require.h"
#include "planning/chance_refusals.h"
#include "planning/read_scatter.h"
#include "planning/two_sample_chances.h"

#include <algorithm>
#include <utility>

namespace keenfall::planning {

namespace {

using trials::Plan;

// The two arms, with the runs that are planned; their ratio is still to be said.
base::Result<TwoSamples> samples_of(const Plan& plan,
                                    const Assumptions& assumptions,
                                    const ChancesAsked& asked) {
  if (auto problem = why_no_chances(plan, assumptions, asked)) {
    return base::failed(*std::move(problem));
  }
  const auto log_sd = read_scatter(plan, assumptions, asked.cutting);
  base::require(log_sd.has_value(), "a plan and assumptions without problems have a scatter");
  return TwoSamples{
      .runs_each = plan.runs_each, .log_sd = *log_sd, .worth_it_margin = asked.worth_it_margin};
}

ChancesAt chances_at(const TwoSamples& samples) {
  ChancesAt at{.true_ratio = samples.true_ratio,
               .runs_each = static_cast<double>(samples.runs_each)};
  const VerdictProbabilities probabilities = two_sample_chances(samples);
  for (std::size_t v = 0; v < kVerdicts; ++v) {
    const auto verdict = static_cast<verdicts::Verdict>(v);
    at.verdicts[v].probability = probabilities[v];
    if (is_settled(verdict)) at.settled.probability += probabilities[v];
    if (is_wrong(verdict, samples.true_ratio, samples.worth_it_margin)) {
      at.wrong.probability += probabilities[v];
    }
  }
  return at;
}

}  // namespace

base::Result<PlanChances> rough_chances(const Plan& plan,
                                        const Assumptions& assumptions,
                                        const ChancesAsked& asked) {
  auto samples = samples_of(plan, assumptions, asked);
  if (!samples) return base::failed(std::move(samples.error()));
  if (samples->runs_each < 2) {
    return base::failed(
        {.kind = base::ProblemKind::bad_value,
         .sentence = "With one run each nobody knows how much runs scatter.",
         .place = {.column = "runs_each", .found = std::to_string(samples->runs_each)},
         .accepted = "2 runs each or more"});
  }
  std::vector<double> ratios = asked.true_ratios;
  if (ratios.empty()) ratios = usual_ratios(asked.worth_it_margin);
  std::ranges::sort(ratios);
  PlanChances chances{.seed = asked.seed};
  for (const double ratio : ratios) {
    samples->true_ratio = ratio;
    chances.at.push_back(chances_at(*samples));
  }
  return chances;
}

base::Result<RunsNeeded> rough_runs_needed(const Plan& plan,
                                           const Assumptions& assumptions,
                                           const ChancesAsked& asked,
                                           double true_ratio) {
  ChancesAsked at_one_ratio = asked;
  at_one_ratio.true_ratios = {true_ratio};
  auto samples = samples_of(plan, assumptions, at_one_ratio);
  if (!samples) return base::failed(std::move(samples.error()));
  samples->true_ratio = true_ratio;
  RunsNeeded needed{.true_ratio = true_ratio,
                    .runs_each = fewest_runs_to_settle(*samples, kMostRunsNeeded)};
  samples->runs_each = needed.runs_each.value_or(kMostRunsNeeded);
  needed.settled.probability = chance_of_settling(*samples);
  return needed;
}

}  // namespace keenfall::planning
