#include "wear/edge_story.h"

#include "numerics/summaries.h"
#include "wear/trial_plan_refusals.h"
#include "wear/trial_truth.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace keenfall::wear {

namespace {

constexpr double kNotReached = std::numeric_limits<double>::infinity();

double life_or_not_reached(const SimulatedEdge& edge, ApexReading reading) {
  return cuts_to_level(edge, reading).value_or(kNotReached);
}

// Interpolating towards an infinite life would be infinite: the order statistic above stands for
// it.
std::optional<double> quantile_reached(const std::vector<double>& sorted, double probability) {
  const double quantile = numerics::quantile_of_sorted(sorted, probability);
  if (!(quantile < kNotReached)) return std::nullopt;
  return quantile;
}

LifeByReading lives_of(const std::vector<SimulatedEdge>& edges, ApexReading reading) {
  LifeByReading life;
  const double own = life_or_not_reached(edges.front(), reading);
  if (own < kNotReached) life.this_edge_cuts = own;
  std::vector<double> others;
  for (auto edge = edges.begin() + 1; edge != edges.end(); ++edge) {
    others.push_back(life_or_not_reached(*edge, reading));
  }
  if (others.empty()) return life;
  std::ranges::sort(others);
  life.others = {.lo80_cuts = quantile_reached(others, 0.1),
                 .median_cuts = quantile_reached(others, 0.5),
                 .hi80_cuts = quantile_reached(others, 0.9)};
  return life;
}

}  // namespace

TrialPlan trial_of(const EdgeQuestion& question) {
  return {.steels = {question.steel},
          .works = {question.work},
          .edges = {question.edge},
          .longest_cuts = question.cuts,
          .edge_length_mm = question.edge_length_mm,
          .seed = question.seed};
}

base::Result<EdgeStory> edge_story(const EdgeQuestion& question,
                                   const base::Executor& executor,
                                   const base::ProgressReport& progress) {
  const TrialPlan plan = trial_of(question);
  if (auto problem = refusal_of(plan)) return base::failed(*problem);
  ApexSimulation simulation = simulation_of(plan, {}, {.read_at_cuts = rising_cuts(question.cuts)});
  simulation.visible_chip_um = question.visible_chip_um;
  // This edge is the first of them: run 0, whatever the number of runs.
  auto edges = simulate(
      simulation, {.runs = 1 + question.other_edges, .seed = question.seed}, executor, progress);
  if (!edges) return base::failed(edges.error());
  EdgeStory story{.push = lives_of(*edges, ApexReading::push),
                  .slice = lives_of(*edges, ApexReading::slice)};
  simulation.read_at_cuts = doubling_checkpoints(question.cuts);
  simulation.keep_sections = true;
  auto told = simulate(simulation, {.runs = 1, .seed = question.seed}, base::one_thread());
  if (!told) return base::failed(told.error());
  story.edge = std::move(told->front());
  return story;
}

}  // namespace keenfall::wear
