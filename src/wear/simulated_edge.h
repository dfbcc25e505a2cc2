// The apex simulator: many edges cut through a schedule, each with its own luck.
//
// In: how the edge starts, the steel, the schedule, the rules of damage and reading, and the cuts
// at which to read. Out: for every run, what would be read there, and what was lost to what.
// Equations and what they leave out: docs/methods/apex.md. A parameter set that gives what practice
// reports is plausible, no more: nothing here was validated against measured edges.
//
// Run r draws from RandomStream{seed, r} and {seed, r + 2^32}, so results depend on neither the
// executor nor the number of runs. Memory: the edge of each run in work, and what is asked to be
// kept.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "base/seed.h"
#include "wear/apex_readings.h"
#include "wear/cutting_work.h"
#include "wear/edge_line.h"

#include <optional>
#include <vector>

namespace keenfall::wear {

struct ApexSimulation {
  EdgeStart edge;
  ApexSteel steel;
  Schedule schedule;
  DamageRules damage;
  ReadingRules reading;
  CutForce force;
  // Rising, from 0 to the schedule's cuts. Read after so many cuts, before a pause that follows.
  std::vector<long> read_at_cuts;
  double visible_chip_um = 10;
  bool keep_sections = false;
  long share_refresh_cuts = 20;  // how often the load is shared anew among the segments
};

struct EdgeReading {
  long cuts = 0;
  double push_um = 0;
  double slice_um = 0;
  double force_newton_per_mm = 0;
  DamageSummary damage;
  std::optional<EdgeLine> section;  // where sections are kept

  bool operator==(const EdgeReading&) const = default;
};

struct DamageCounts {
  long hits = 0;
  long dents = 0;  // one for each hit that dented
  long folds = 0;
  long chips = 0;
  long twists = 0;  // patches that folded or broke under a sideways load

  bool operator==(const DamageCounts&) const = default;
};

// Metal that left the apex, by what took it, in um^3. Where the land gain of chips is 1 it adds up
// to what the lands tell: sum of (w^2 - w0^2) / (4 t) x segment length.
struct MetalLost {
  double worn_um3 = 0;
  double dented_um3 = 0;  // pushed aside
  double folded_um3 = 0;  // folds that fell off
  double chipped_um3 = 0;
  double corroded_um3 = 0;

  bool operator==(const MetalLost&) const = default;
};

struct SimulatedEdge {
  std::vector<EdgeReading> readings;  // one per cut asked for
  DamageCounts counts;
  MetalLost lost;

  bool operator==(const SimulatedEdge&) const = default;
};

struct Ensemble {
  int runs = 1;
  base::Seed seed;
};

// Refused: lengths, rates and counts out of their ranges (named), readings past the schedule.
// Fails as interrupted where the progress report asks to stop.
[[nodiscard]] base::Result<std::vector<SimulatedEdge>> simulate(
    const ApexSimulation& simulation,
    const Ensemble& ensemble,
    const base::Executor& executor,
    const base::ProgressReport& progress = base::unwatched());

}  // namespace keenfall::wear
