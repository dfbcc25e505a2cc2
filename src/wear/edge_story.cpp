#include "wear/edge_story.h"

#include "numerics/summaries.h"
#include "wear/edge_life.h"
#include "wear/trial_plan_refusals.h"
#include "wear/trial_truth.h"

#include <algorithm>
#include <limits>
#include <numeric>
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

// The median edge: half of the others are blunt sooner.
std::size_t middle_of(const std::vector<SimulatedEdge>& edges) {
  std::vector<std::size_t> order(edges.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::stable_sort(order, {}, [&](std::size_t edge) {
    return std::pair(life_or_not_reached(edges[edge], ApexReading::push),
                     -edges[edge].readings.back().push_um);
  });
  return order[order.size() / 2];
}

LifeByReading lives_of(const std::vector<SimulatedEdge>& edges,
                       std::size_t shown,
                       ApexReading reading) {
  LifeByReading life;
  const double own = life_or_not_reached(edges[shown], reading);
  if (own < kNotReached) life.this_edge_cuts = own;
  std::vector<double> others;
  for (std::size_t edge = 0; edge < edges.size(); ++edge) {
    if (edge != shown) others.push_back(life_or_not_reached(edges[edge], reading));
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
  const auto problems = problems_of(plan);
  if (!problems.empty()) return base::failed(problems.front());
  ApexSimulation simulation = simulation_of(plan, {}, {.read_at_cuts = rising_cuts(question.cuts)});
  simulation.visible_chip_um = question.visible_chip_um;
  auto edges = simulate(
      simulation, {.runs = 1 + question.other_edges, .seed = question.seed}, executor, progress);
  if (!edges) return base::failed(edges.error());
  const std::size_t shown = middle_of(*edges);
  EdgeStory story{.number = static_cast<int>(shown) + 1,
                  .push = lives_of(*edges, shown, ApexReading::push),
                  .slice = lives_of(*edges, shown, ApexReading::slice)};
  simulation.read_at_cuts = doubling_checkpoints(question.cuts);
  simulation.keep_sections = true;
  story.edge =
      lived(simulation, stretches_of(simulation.schedule), {.seed = question.seed, .run = shown});
  return story;
}

}  // namespace keenfall::wear
