#include "wear/trial_plan_refusals.h"

#include "base/plain_number.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace keenfall::wear {

namespace {

using base::Problem;
using base::ProblemKind;

constexpr int kMostRunsEach = 1000;
constexpr int kMostRepeats = 100;
constexpr long kLongestCuts = 1'000'000;
constexpr std::size_t kMostRuns = 20'000;

std::optional<Problem> outside(const std::string& what,
                               double found,
                               bool holds,
                               const std::string& accepted) {
  if (holds && std::isfinite(found)) return std::nullopt;
  return Problem{.kind = ProblemKind::bad_value,
                 .sentence = what + " is out of its range",
                 .place = {.found = base::plain_number(found)},
                 .accepted = accepted};
}

std::optional<Problem> none_of(const std::string& what, bool is_empty) {
  if (!is_empty) return std::nullopt;
  return Problem{.kind = ProblemKind::missing,
                 .sentence = "a simulated trial needs " + what + ", and there is none"};
}

template <class Named>
std::optional<Problem> named_twice(const std::string& what, const std::vector<Named>& all) {
  for (auto one = all.begin(); one != all.end(); ++one) {
    const auto same = [&](const Named& other) { return other.name == one->name; };
    if (std::find_if(one + 1, all.end(), same) == all.end()) continue;
    return Problem{.kind = ProblemKind::conflicting,
                   .sentence = "the " + what + " " + one->name + " is asked for twice",
                   .place = {.found = one->name},
                   .accepted = "each once"};
  }
  return std::nullopt;
}

std::optional<Problem> edges_refusal(const TrialPlan& plan) {
  for (auto one = plan.edges.begin(); one != plan.edges.end(); ++one) {
    const auto same = [&](const TrialEdge& other) {
      return other.finish_name == one->finish_name && other.apex_angle == one->apex_angle;
    };
    if (std::find_if(one + 1, plan.edges.end(), same) == plan.edges.end()) continue;
    return Problem{.kind = ProblemKind::conflicting,
                   .sentence = "an edge is asked for twice: the same finish at the same angle",
                   .place = {.found = one->finish_name},
                   .accepted = "each once"};
  }
  return std::nullopt;
}

std::optional<Problem> works_refusal(const TrialPlan& plan) {
  for (const WorkPlan& work : plan.works) {
    const bool cuts = std::ranges::any_of(work.steps, [](const WorkStep& step) {
      return std::holds_alternative<AbrasiveMedium>(step.what) && step.cuts > 0;
    });
    if (cuts) continue;
    return Problem{.kind = ProblemKind::bad_value,
                   .sentence = "the work " + work.name + " has no cut in it",
                   .place = {.found = work.name},
                   .accepted = "at least one medium with a number of cuts above 0"};
  }
  return std::nullopt;
}

std::optional<Problem> scatter_refusal(const PracticeScatter& scatter) {
  const struct {
    const char* what;
    double log_sd;
  } all[] = {{"the scatter of runs", scatter.run_log_sd},
             {"the scatter of blocks", scatter.block_log_sd},
             {"the scatter of starts", scatter.start_log_sd},
             {"the scatter of spots", scatter.spot_log_sd},
             {"the scatter of readings", scatter.reading_log_sd}};
  for (const auto& each : all) {
    const bool holds = each.log_sd >= 0 && each.log_sd <= 2;
    if (auto problem = outside(each.what, each.log_sd, holds, "0 to 2, as sd of a log")) {
      return problem;
    }
  }
  return std::nullopt;
}

std::optional<Problem> counts_refusal(const TrialPlan& plan) {
  const auto within = [](const std::string& what, long found, long lo, long hi) {
    return outside(what,
                   static_cast<double>(found),
                   found >= lo && found <= hi,
                   std::to_string(lo) + " to " + std::to_string(hi));
  };
  if (auto problem = within("the number of runs of each arm", plan.runs_each, 1, kMostRunsEach)) {
    return problem;
  }
  if (auto problem = within("the number of blocks", plan.blocks, 1, plan.runs_each)) {
    return problem;
  }
  if (auto problem = within("the readings at a checkpoint", plan.repeats, 1, kMostRepeats)) {
    return problem;
  }
  if (auto problem = within("the longest run in cuts", plan.longest_cuts, 1, kLongestCuts)) {
    return problem;
  }
  const std::size_t runs = plan.steels.size() * plan.works.size() * plan.edges.size() *
                           static_cast<std::size_t>(plan.runs_each);
  if (runs > kMostRuns) {
    return within("the number of runs in all", static_cast<long>(runs), 1, kMostRuns);
  }
  if (auto problem = within("the edges cut for the truth", plan.truth_edges, 1, 100'000)) {
    return problem;
  }
  return outside("the stop level", plan.stop_level, plan.stop_level > 1, "above 1");
}

}  // namespace

std::optional<Problem> refusal_of(const TrialPlan& plan) {
  if (auto problem = none_of("a steel", plan.steels.empty())) return problem;
  if (auto problem = none_of("something to cut", plan.works.empty())) return problem;
  if (auto problem = none_of("an edge", plan.edges.empty())) return problem;
  if (auto problem = named_twice("steel", plan.steels)) return problem;
  if (auto problem = named_twice("medium", plan.works)) return problem;
  if (auto problem = edges_refusal(plan)) return problem;
  if (auto problem = works_refusal(plan)) return problem;
  if (auto problem = counts_refusal(plan)) return problem;
  return scatter_refusal(plan.scatter);
}

}  // namespace keenfall::wear
