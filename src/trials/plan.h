// What is asked and what is planned before the first cut: a claim that could fail, the arms, how
// often and where the edge is read, when a run stops, in which shuffled order runs are cut.
//
// Values only. Angles per side in degrees, lengths in mm, readings in the unit of the kind that is
// read; cuts as the trial counts them. A plan that is sealed is not changed afterwards: what is
// done otherwise is a deviation, and is said.
// Invariants (planning/plan_flaws.h says what a plan that a person made lacks of them): every
// PlannedArm::cutting indexes Plan::cuttings, every PlannedRun::arm Plan::arms; checkpoints rise
// from 0; orders are 1, 2, 3 ... through the whole plan.
#pragma once

#include "base/seed.h"
#include "trials/counted.h"
#include "trials/cutting.h"
#include "trials/edge.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::trials {

struct Claim {
  std::string words;             // "C outlasts A in new sisal matting, by half at least"
  double worth_it_margin = 1.5;  // the ratio of lasting below which nobody would act; above 1

  bool operator==(const Claim&) const = default;
};

// One way of working that blades are compared in: what is cut, how, and at which cuts is read. The
// last checkpoint is the cap: a run that is still keen there stops, and lasted at least so long.
struct PlannedCutting {
  Medium medium;
  std::string lot;  // empty: not said
  CutMethod method;
  std::vector<double> checkpoint_cuts;  // rising, the first 0

  bool operator==(const PlannedCutting&) const = default;
};

struct PlannedArm {
  std::string blade;
  EdgePreparation edge;
  std::size_t cutting = 0;  // index into Plan::cuttings

  bool operator==(const PlannedArm&) const = default;
};

struct PlannedReading {
  std::string kind = "thread_push";  // by name (trials/reading_kind.h)
  std::string unit;                  // empty: the kind's own
  std::string thread;                // empty: not said
  std::string thread_lot;            // empty: not said
  int repeats = 7;                   // readings at a checkpoint, 1 or more
  std::vector<std::string> stations;

  bool operator==(const PlannedReading&) const = default;
};

// What an edge must read before its run begins.
struct StartGate {
  double target_reading = 0;
  double tolerance_fraction = 0.12;

  bool operator==(const StartGate&) const = default;
};

// When a run ends before its last checkpoint. At most one of level and reading.
struct StopRule {
  std::optional<double> level;             // times the start reading, above 1
  std::optional<double> reading;           // in the unit that is read
  std::optional<double> force_cap_newton;  // a blunt edge slips: no harder than this, ever

  bool operator==(const StopRule&) const = default;
};

struct PlannedRun {
  std::size_t arm = 0;   // index into Plan::arms
  std::string specimen;  // empty: the blade's only one
  int block = 1;         // from 1
  int order = 1;         // place in the order of cutting, from 1

  bool operator==(const PlannedRun&) const = default;
};

struct Plan {
  Counted counted;  // what the fields called cuts count
  std::vector<PlannedCutting> cuttings;
  std::vector<PlannedArm> arms;
  PlannedReading reading;
  std::optional<StartGate> start_gate;
  StopRule stop;
  int runs_each = 6;
  std::vector<int> looks;  // runs of every arm at each planned look, rising; empty: one, at the end
  std::string house_blade;  // a reference blade in every block; empty: none
  base::Seed order_seed{1};
  std::vector<PlannedRun> runs;  // in the order of cutting; empty: not shuffled yet

  bool operator==(const Plan&) const = default;
};

}  // namespace keenfall::trials
