#include "wear/apex_scenario.h"

#include "base/require.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace keenfall::wear {

namespace {

constexpr long kFirstTry = 32;
constexpr long kLonger = 4;

}  // namespace

ApexSimulation simulation_of(const ApexScenario& scenario, std::size_t steel, long cuts) {
  base::require(steel < scenario.steels.size(), "the scenario has this steel");
  const materials::Microstructure& of = scenario.steels[steel];
  return {.edge = scenario.edge,
          .steel = apex_steel(of, scenario.flaw_constant),
          .schedule = schedule_of(scenario.work, of, {.cuts = cuts}),
          .damage = scenario.damage,
          .reading = scenario.reading,
          .read_at_cuts = rising_cuts(cuts)};
}

std::optional<double> median_life_cuts(const ApexScenario& scenario,
                                       std::size_t steel,
                                       const LifeAsked& asked) {
  for (long cuts = kFirstTry;; cuts *= kLonger) {
    cuts = std::min(cuts, asked.longest_cuts);
    const auto edges = simulate(simulation_of(scenario, steel, cuts),
                                {.runs = asked.runs, .seed = asked.seed},
                                base::one_thread());
    if (!edges) return std::nullopt;
    std::vector<double> lives;
    for (const SimulatedEdge& edge : *edges) {
      const auto life = cuts_to_level(edge, asked.reading, asked.level);
      lives.push_back(life.value_or(std::numeric_limits<double>::infinity()));
    }
    std::ranges::sort(lives);
    // By hand: a life that was not reached would make a quantile's interpolation no number.
    const double above_middle = lives[lives.size() / 2];
    const double below_middle = lives[(lives.size() - 1) / 2];
    if (std::isfinite(above_middle)) return (below_middle + above_middle) / 2;
    if (cuts == asked.longest_cuts) return std::nullopt;
  }
}

std::optional<double> life_ratio(const ApexScenario& scenario, const LifeAsked& asked) {
  base::require(scenario.steels.size() >= 2, "a ratio needs two steels");
  const auto over = median_life_cuts(scenario, 0, asked);
  const auto under = median_life_cuts(scenario, 1, asked);
  if (!over || !under || *under == 0) return std::nullopt;
  return *over / *under;
}

}  // namespace keenfall::wear
