// One edge over the cuts, told for a person: what is read on it, its section at the start and at
// the end, what took the metal, and how far the luck of other edges lies from its own. It is the
// typical one of many that differ by luck alone.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "base/seed.h"
#include "materials/microstructure.h"
#include "wear/half_keenness.h"
#include "wear/simulated_edge.h"
#include "wear/simulated_trial.h"
#include "wear/work_plan.h"

#include <optional>
#include <vector>

namespace keenfall::wear {

struct EdgeQuestion {
  materials::Microstructure steel;
  WorkPlan work;
  TrialEdge edge;
  long cuts = 255;
  double edge_length_mm = 20;
  double visible_chip_um = 10;
  int other_edges = 40;  // cut for the spread of lives
  base::Seed seed;
};

// Of the middle four fifths of the other edges; none: that quantile was not reached within the
// cuts.
struct LifeSpread {
  std::optional<double> lo80_cuts;
  std::optional<double> median_cuts;
  std::optional<double> hi80_cuts;
};

struct LifeByReading {
  std::optional<double> this_edge_cuts;  // to half keenness; none: not within the cuts
  LifeSpread others;
};

struct EdgeStory {
  SimulatedEdge edge;  // read at doubling checkpoints, each with its section
  // Which of the edges it is, from 1: the one in the middle by its life of push readings; those
  // that do not get there within the cuts stand behind, by their last reading.
  int number = 1;
  LifeByReading push;
  LifeByReading slice;
};

// The plan of a trial that has this edge alone.
[[nodiscard]] TrialPlan trial_of(const EdgeQuestion& question);

// Refused and interrupted as `simulate` is.
[[nodiscard]] base::Result<EdgeStory> edge_story(
    const EdgeQuestion& question,
    const base::Executor& executor,
    const base::ProgressReport& progress = base::unwatched());

}  // namespace keenfall::wear
