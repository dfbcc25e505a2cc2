// What a run at the bench is to be: whose edge, in what, read when and how often, until when.
//
// Taken from a sealed plan, so that the bench decides nothing: it follows. Readings are in the unit
// of the plan's reading, cuts as the trial counts them, angles per side.
#pragma once

#include "base/result.h"
#include "trials/plan.h"
#include "trials/reading_kind.h"
#include "trials/trial.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::bench {

struct RunSheet {
  trials::Run run;  // arm, specimen, block, order, lot and name; nothing read yet
  trials::Counted counted;
  trials::ReadingKind kind;
  std::string unit;  // of all readings; not empty
  std::string thread;
  std::string thread_lot;
  int repeats = 7;                      // readings at a checkpoint, 1 or more
  std::vector<std::string> stations;    // in the order of reading; empty: anywhere
  std::vector<double> checkpoint_cuts;  // rising from 0; the last is the cap
  std::optional<trials::StartGate> start_gate;
  trials::StopRule stop;

  bool operator==(const RunSheet&) const = default;
};

// Which run of a sealed plan is cut.
struct RunToCut {
  std::string name;          // within its arm; not empty
  std::size_t arm = 0;       // index into Plan::arms
  std::string specimen;      // empty: the blade's only one
  int block = 1;             // from 1
  std::optional<int> order;  // its place in the plan's order; absent: cut beyond the plan

  bool operator==(const RunToCut&) const = default;
};

// `kind`: what Plan::reading names. Refused where the plan has no such arm (it was changed since),
// or the arm's way of cutting no checkpoints.
[[nodiscard]] base::Result<RunSheet> sheet_of(const trials::Plan& plan,
                                              const RunToCut& run,
                                              const trials::ReadingKind& kind);

// Stations take turns: a reading damages its own spot, so the next one is somewhere else. `taken`:
// readings of this checkpoint so far. Empty where the plan has no stations.
[[nodiscard]] std::string station_in_turn(const RunSheet& sheet, std::size_t taken);

}  // namespace keenfall::bench
