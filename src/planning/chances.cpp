#include "planning/chances.h"

#include "numerics/random.h"
#include "planning/chance_refusals.h"
#include "planning/imagined_trial.h"
#include "planning/quick_judging.h"
#include "planning/running_flaws.h"
#include "planning/shuffled_order.h"
#include "verdicts/planned_looks.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <string>
#include <utility>

namespace keenfall::planning {

namespace {

using trials::Plan;
using verdicts::Verdict;

constexpr int kTrialsInATask = 10;

// What was seen in some of the trials at one ratio.
struct Counts {
  std::array<int, kVerdicts> verdicts{};
  int wrong = 0;
  int runs_each = 0;  // summed over the trials
};

void add(Counts& sum, const Counts& part) {
  for (std::size_t v = 0; v < kVerdicts; ++v) sum.verdicts[v] += part.verdicts[v];
  sum.wrong += part.wrong;
  sum.runs_each += part.runs_each;
}

// One plan, ready to be imagined again and again.
struct Rehearsal {
  Plan plan;  // shuffled
  Assumptions assumptions;
  ChancesAsked asked;
  AskedPair pair;
  std::vector<int> looks;  // runs of every arm; at least one
  verdicts::LookStretch stretch;
};

Verdict verdict_after(const Rehearsal& rehearsal, const trials::Trial& trial) {
  const auto ratio =
      quick_ratio(trial,
                  {.kind = rehearsal.asked.kind.name, .thread = rehearsal.plan.reading.thread},
                  {.worth_it_margin = rehearsal.asked.worth_it_margin},
                  rehearsal.pair);
  if (!ratio) return Verdict::not_settled;
  return verdict_on(stretched(ratio->bounds, ratio->median, rehearsal.stretch),
                    rehearsal.asked.worth_it_margin);
}

// The chance of trial `number` is the same at every ratio: what differs is the ratio alone.
void imagine(const Rehearsal& rehearsal, double true_ratio, int number, Counts& counts) {
  Assumptions assumptions = rehearsal.assumptions;
  assumptions.true_ratio = true_ratio;
  numerics::RandomStream random(rehearsal.asked.seed, static_cast<std::uint64_t>(number));
  const trials::Trial whole = imagined_trial({.plan = rehearsal.plan,
                                              .assumptions = assumptions,
                                              .kind = rehearsal.asked.kind,
                                              .cutting = rehearsal.asked.cutting},
                                             random);
  Verdict verdict = Verdict::not_settled;
  int runs_each = 0;
  for (const int look : rehearsal.looks) {
    runs_each = look;
    const bool is_last = look == rehearsal.looks.back();
    verdict = verdict_after(rehearsal, is_last ? whole : first_blocks(whole, look));
    if (is_settled(verdict)) break;
  }
  ++counts.verdicts[static_cast<std::size_t>(verdict)];
  counts.wrong += is_wrong(verdict, true_ratio, rehearsal.asked.worth_it_margin) ? 1 : 0;
  counts.runs_each += runs_each;
}

ChancesAt chances_from(const Counts& counts, double true_ratio, int trials) {
  ChancesAt at{.true_ratio = true_ratio,
               .wrong = chance_from(counts.wrong, trials),
               .runs_each = static_cast<double>(counts.runs_each) / trials};
  for (std::size_t v = 0; v < kVerdicts; ++v) {
    at.verdicts[v] = chance_from(counts.verdicts[v], trials);
  }
  const int open = counts.verdicts[static_cast<std::size_t>(Verdict::not_settled)];
  at.settled = chance_from(trials - open, trials);
  return at;
}

base::Result<Rehearsal> rehearsal_of(const Plan& plan,
                                     const Assumptions& assumptions,
                                     const ChancesAsked& asked) {
  if (auto problem = why_no_chances(plan, assumptions, asked)) {
    return base::failed(*std::move(problem));
  }
  const std::vector<trials::Arm> arms = arms_of_cutting(plan, asked.cutting);
  Rehearsal rehearsal{.plan = plan,
                      .assumptions = assumptions,
                      .asked = asked,
                      .pair = {.a = arms.front(), .b = arms.back()},
                      .looks = plan.looks};
  if (!is_in_order(plan)) {
    auto runs = shuffled_order(plan, asked.blades);
    if (!runs) return base::failed(std::move(runs.error()));
    rehearsal.plan.runs = *std::move(runs);
  }
  if (rehearsal.looks.empty() || rehearsal.looks.back() < plan.runs_each) {
    rehearsal.looks.push_back(plan.runs_each);
  }
  if (rehearsal.looks.size() > 1) {
    rehearsal.stretch = verdicts::stretch_for_looks(
        {.runs_each = rehearsal.looks, .arms = static_cast<int>(arms.size())}, asked.seed);
  }
  return rehearsal;
}

}  // namespace

Chance chance_from(int count, int trials) {
  const double p = (count + 2.0) / (trials + 4.0);
  return {.probability = static_cast<double>(count) / trials,
          .error = std::sqrt(p * (1 - p) / (trials + 4.0))};
}

std::vector<double> usual_ratios(double worth_it_margin, std::optional<double> own) {
  std::vector<double> ratios{1, std::sqrt(worth_it_margin), worth_it_margin, 2, 3};
  if (own) ratios.push_back(*own);
  std::ranges::sort(ratios);
  ratios.erase(std::unique(ratios.begin(), ratios.end()), ratios.end());
  return ratios;
}

bool is_wrong(Verdict verdict, double true_ratio, double worth_it_margin) {
  const double smallest = 1 / worth_it_margin;
  const bool is_inside = true_ratio > smallest && true_ratio < worth_it_margin;
  switch (verdict) {
    case Verdict::longer_and_worth_having:
      return true_ratio <= worth_it_margin;
    case Verdict::longer:
      return true_ratio <= 1;
    case Verdict::longer_but_too_little_to_matter:
      return true_ratio <= 1 || !is_inside;
    case Verdict::practically_the_same:
      return !is_inside;
    case Verdict::shorter_but_too_little_to_matter:
      return true_ratio >= 1 || !is_inside;
    case Verdict::shorter:
      return true_ratio >= 1;
    case Verdict::shorter_by_enough_to_matter:
      return true_ratio >= smallest;
    case Verdict::not_settled:
      break;
  }
  return false;
}

base::Result<PlanChances> chances_of(const Plan& plan,
                                     const Assumptions& assumptions,
                                     const ChancesAsked& asked,
                                     const base::Executor& execute,
                                     const base::ProgressReport& report) {
  const auto rehearsal = rehearsal_of(plan, assumptions, asked);
  if (!rehearsal) return base::failed(rehearsal.error());
  std::vector<double> ratios = asked.true_ratios;
  if (ratios.empty()) ratios = usual_ratios(asked.worth_it_margin);
  std::ranges::sort(ratios);

  const int tasks_each = (asked.trials + kTrialsInATask - 1) / kTrialsInATask;
  std::vector<Counts> counted(ratios.size() * static_cast<std::size_t>(tasks_each));
  const std::size_t wanted = ratios.size() * static_cast<std::size_t>(asked.trials);
  std::atomic<std::size_t> done = 0;  // trials
  std::atomic<bool> stopped = false;
  std::vector<base::Task> tasks;
  for (std::size_t t = 0; t < counted.size(); ++t) {
    tasks.push_back([&, t] {
      const double ratio = ratios[t / static_cast<std::size_t>(tasks_each)];
      const int first = static_cast<int>(t % static_cast<std::size_t>(tasks_each)) * kTrialsInATask;
      const int last = std::min(first + kTrialsInATask, asked.trials);
      for (int number = first; number < last && !stopped; ++number) {
        imagine(*rehearsal, ratio, number, counted[t]);
        const double fraction = static_cast<double>(++done) / static_cast<double>(wanted);
        if (!report({.fraction_done = fraction, .stage = "cutting the plan in imagination"})) {
          stopped = true;
        }
      }
    });
  }
  execute(tasks);
  if (stopped && done < wanted) {
    return base::failed(
        {.kind = base::ProblemKind::interrupted,
         .sentence = "The chances were not worked out to the end: it was stopped."});
  }
  PlanChances chances{.trials = asked.trials, .seed = asked.seed};
  for (std::size_t r = 0; r < ratios.size(); ++r) {
    Counts sum;
    for (int t = 0; t < tasks_each; ++t) {
      add(sum, counted[r * static_cast<std::size_t>(tasks_each) + static_cast<std::size_t>(t)]);
    }
    chances.at.push_back(chances_from(sum, ratios[r], asked.trials));
  }
  return chances;
}

}  // namespace keenfall::planning
