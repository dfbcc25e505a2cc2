#include "wear/trial_plan_refusals.h"

#include "base/plain_number.h"
#include "wear/refusals.h"
#include "wear/trial_truth.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace keenfall::wear {

namespace {

using base::Problem;
using base::ProblemKind;
using Problems = std::vector<Problem>;

constexpr int kMostRunsEach = 1000;
constexpr int kMostRepeats = 100;
constexpr long kLongestCuts = 1'000'000;
constexpr std::size_t kMostRuns = 20'000;

// Each once: several arms may share what is wrong with them.
void add(Problems& problems, Problem problem) {
  const bool is_there = std::ranges::any_of(
      problems, [&](const Problem& other) { return in_words(other) == in_words(problem); });
  if (!is_there) problems.push_back(std::move(problem));
}

bool hold(Problems& problems,
          const std::string& what,
          double found,
          bool holds,
          const std::string& accepted) {
  if (holds && std::isfinite(found)) return true;
  add(problems,
      {.kind = ProblemKind::bad_value,
       .sentence = what + " is out of its range, at " + base::plain_number(found),
       .place = {.found = base::plain_number(found)},
       .accepted = accepted});
  return false;
}

void add_missing(Problems& problems, const std::string& what, bool is_empty) {
  if (!is_empty) return;
  add(problems,
      {.kind = ProblemKind::missing,
       .sentence = "a simulated trial needs " + what + ", and there is none"});
}

template <class Named>
void add_named_twice(Problems& problems, const std::string& what, const std::vector<Named>& all) {
  for (auto one = all.begin(); one != all.end(); ++one) {
    const auto same = [&](const Named& other) { return other.name == one->name; };
    if (std::find_if(one + 1, all.end(), same) == all.end()) continue;
    add(problems,
        {.kind = ProblemKind::conflicting,
         .sentence = "the " + what + " " + one->name + " is asked for twice",
         .place = {.found = one->name},
         .accepted = "each once"});
  }
}

void add_edges_twice(Problems& problems, const TrialPlan& plan) {
  for (auto one = plan.edges.begin(); one != plan.edges.end(); ++one) {
    const auto same = [&](const TrialEdge& other) {
      return other.finish_name == one->finish_name && other.apex_angle == one->apex_angle;
    };
    if (std::find_if(one + 1, plan.edges.end(), same) == plan.edges.end()) continue;
    add(problems,
        {.kind = ProblemKind::conflicting,
         .sentence = "an edge is asked for twice: the same finish at the same angle",
         .place = {.found = one->finish_name},
         .accepted = "each once"});
  }
}

void add_works_without_cuts(Problems& problems, const TrialPlan& plan) {
  for (const WorkPlan& work : plan.works) {
    const bool cuts = std::ranges::any_of(work.steps, [](const WorkStep& step) {
      return std::holds_alternative<AbrasiveMedium>(step.what) && step.cuts > 0;
    });
    if (cuts) continue;
    add(problems,
        {.kind = ProblemKind::bad_value,
         .sentence = "the work " + work.name + " has no cut in it",
         .place = {.found = work.name},
         .accepted = "at least one medium with a number of cuts above 0"});
  }
}

void add_scatters(Problems& problems, const PracticeScatter& scatter) {
  const struct {
    const char* what;
    double log_sd;
  } all[] = {{"the scatter of runs", scatter.run_log_sd},
             {"the scatter of blocks", scatter.block_log_sd},
             {"the scatter of starts", scatter.start_log_sd},
             {"the scatter of spots", scatter.spot_log_sd},
             {"the scatter of readings", scatter.reading_log_sd}};
  for (const auto& each : all) {
    hold(problems,
         each.what,
         each.log_sd,
         each.log_sd >= 0 && each.log_sd <= 2,
         "0 to 2, as sd of a log");
  }
}

void add_counts(Problems& problems, const TrialPlan& plan) {
  const auto within = [&](const std::string& what, long found, long lo, long hi) {
    return hold(problems,
                what,
                static_cast<double>(found),
                found >= lo && found <= hi,
                std::to_string(lo) + " to " + std::to_string(hi));
  };
  if (within("the number of runs of each arm", plan.runs_each, 1, kMostRunsEach)) {
    within("the number of blocks", plan.blocks, 1, plan.runs_each);
    const std::size_t runs = plan.steels.size() * plan.works.size() * plan.edges.size() *
                             static_cast<std::size_t>(plan.runs_each);
    if (runs > 0) within("the number of runs in all", static_cast<long>(runs), 1, kMostRuns);
  }
  within("the readings at a checkpoint", plan.repeats, 1, kMostRepeats);
  within("the longest run in cuts", plan.longest_cuts, 1, kLongestCuts);
  within("the edges cut for the truth", plan.truth_edges, 1, 100'000);
  hold(problems, "the stop level", plan.stop_level, plan.stop_level > 1, "above 1");
}

void add_edges(Problems& problems, const TrialPlan& plan) {
  const long cuts = std::clamp(plan.longest_cuts, 1L, kLongestCuts);
  for (std::size_t work = 0; work < plan.works.size(); ++work) {
    for (std::size_t edge = 0; edge < plan.edges.size(); ++edge) {
      for (std::size_t steel = 0; steel < plan.steels.size(); ++steel) {
        const ApexSimulation first =
            simulation_of(plan,
                          {.arm = {}, .steel = steel, .work = work, .edge = edge},
                          {.read_at_cuts = doubling_checkpoints(cuts)});
        for (Problem& problem : problems_of(first, {})) add(problems, std::move(problem));
      }
    }
  }
}

}  // namespace

std::vector<base::Problem> problems_of(const TrialPlan& plan) {
  Problems problems;
  add_missing(problems, "a steel", plan.steels.empty());
  add_missing(problems, "something to cut", plan.works.empty());
  add_missing(problems, "an edge", plan.edges.empty());
  add_named_twice(problems, "steel", plan.steels);
  add_named_twice(problems, "medium", plan.works);
  add_edges_twice(problems, plan);
  add_works_without_cuts(problems, plan);
  add_counts(problems, plan);
  add_scatters(problems, plan.scatter);
  add_edges(problems, plan);
  return problems;
}

}  // namespace keenfall::wear
