// A whole trial as the simulator would have it: an ordinary trial, as if somebody had cut and read,
// and beside it the truth that nobody at a bench could know.
//
// Arms are steels x edges x works; a steel is one blade, named after it. Runs are cut in blocks, in
// shuffled order, each with the scatter of practice: how severe it was, its block, its sharpening,
// the spot that was read, and each reading. Every run's note says that it is simulated.
// Readings in gf (push) or mm (draw): proportional to the simulator's in um, by a guess. Whoever
// judges the trial knows no more than what stands in it, so that simulating and recovering stay
// apart. Parameters are plausible, not validated: docs/methods/apex.md.
#pragma once

#include "base/execution.h"
#include "base/result.h"
#include "base/seed.h"
#include "materials/microstructure.h"
#include "trials/trial.h"
#include "wear/half_keenness.h"
#include "wear/simulated_edge.h"
#include "wear/work_plan.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::wear {

struct TrialEdge {
  std::string finish_name;
  EdgeFinish finish;
  trials::PerSideAngle apex_angle{15};

  bool operator==(const TrialEdge&) const = default;
};

// Standard deviations of logs. Run, block, start and reading: common practice, no source; the spot
// is a guess.
struct PracticeScatter {
  double run_log_sd = 0.20;    // how severe a run is: its wear rate and its number of hits
  double block_log_sd = 0.06;  // the same for all runs of a block in one work
  double start_log_sd = 0.06;  // start width of the land, by sharpening
  double spot_log_sd = 0.04;   // of the spot read, at each checkpoint
  double reading_log_sd = 0.09;

  bool operator==(const PracticeScatter&) const = default;
};

// Guesses: a fresh land of 0.5 um reads 104 gf, or draws 7.5 mm of cord.
inline constexpr double kThreadPushGfPerUm = 208;
inline constexpr double kCordDrawMmPerUm = 15;

struct TrialPlan {
  std::string name = "A simulated trial";
  std::vector<materials::Microstructure> steels;
  std::vector<WorkPlan> works;
  std::vector<TrialEdge> edges;
  int runs_each = 6;         // of each arm
  int blocks = 6;            // 1 to runs_each; runs are shared out evenly
  int repeats = 7;           // readings at a checkpoint
  long longest_cuts = 1023;  // a run that is not blunt by then stops there
  double stop_level = 4;     // times the mean reading at its start
  ApexReading reading = ApexReading::push;
  PracticeScatter scatter;
  double edge_length_mm = 20;
  DamageRules damage;
  ReadingRules rules;
  double flaw_constant = 0.10;
  base::Seed seed;
  int truth_edges = 100;  // edges of each arm cut for the truth
};

// Median over edges that differ by the luck of their hits alone.
struct ArmTruth {
  trials::Arm arm;
  double start_reading = 0;         // in the trial's unit
  std::optional<double> life_cuts;  // to SimulatedTrial::level; none: not in 100 longest runs
};

// Arms of one work and one finish, since lives are relative to the start.
struct RatioTruth {
  std::size_t a = 0;  // into SimulatedTrial::arms; a lasts longer
  std::size_t b = 0;
  double ratio = 1;
};

struct SimulatedTrial {
  trials::Trial trial;
  // Times the start, at which such readings are compared: 2 (half keenness), of a cord draw 4.
  double level = 2;
  std::vector<ArmTruth> arms;
  std::vector<RatioTruth> ratios;
};

// As a table writes it: "fine, teeth 0.6 um". With a size, since a finish in words alone does not
// tell two edges alike.
[[nodiscard]] std::string finish_in_words(const TrialEdge& edge);

// 0, 1, 3, 7, 15, ... and `longest` at the end.
[[nodiscard]] std::vector<long> doubling_checkpoints(long longest);

// Refused: nothing to cut, numbers out of their ranges, a blade or a medium named twice. Fails as
// interrupted where the progress report asks to stop.
[[nodiscard]] base::Result<SimulatedTrial> simulated_trial(
    const TrialPlan& plan,
    const base::Executor& executor,
    const base::ProgressReport& progress = base::unwatched());

}  // namespace keenfall::wear
