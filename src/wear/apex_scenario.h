// A question to the simulator as one value: steels, what they cut, one edge, and every constant
// that is not well known. What is asked of it (half keenness, a ratio of two) is a function of it.
#pragma once

#include "materials/microstructure.h"
#include "wear/half_keenness.h"
#include "wear/simulated_edge.h"
#include "wear/work_plan.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace keenfall::wear {

struct ApexScenario {
  std::vector<materials::Microstructure> steels;
  WorkPlan work;  // in one medium or several, with pauses
  EdgeStart edge;
  double flaw_constant = 0.10;  // c_f of t*
  DamageRules damage;
  ReadingRules reading;

  bool operator==(const ApexScenario&) const = default;
};

// Of one of its steels, so many cuts of its work.
[[nodiscard]] ApexSimulation simulation_of(const ApexScenario& scenario,
                                           std::size_t steel,
                                           long cuts);

struct LifeAsked {
  ApexReading reading = ApexReading::push;
  double level = 2;  // times the start reading; 2: half keenness
  int runs = 20;
  base::Seed seed;
  long longest_cuts = 100000;
};

// Median over the runs of the cuts to the level. None: most runs do not reach it, or the scenario
// is out of its ranges.
[[nodiscard]] std::optional<double> median_life_cuts(const ApexScenario& scenario,
                                                     std::size_t steel,
                                                     const LifeAsked& asked);

// The first steel's median life over the second's.
[[nodiscard]] std::optional<double> life_ratio(const ApexScenario& scenario,
                                               const LifeAsked& asked);

}  // namespace keenfall::wear
