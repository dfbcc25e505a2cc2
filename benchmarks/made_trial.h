// A trial of any size made from a known truth, by the product's own simulator: thread push readings
// that follow the blunting curve, with scatter of runs, starts, blocks and readings.
#pragma once

#include "trials/trial.h"

namespace keenfall::benchmarks {

// Every blade in every medium is an arm; run k of every arm lies in block k, and the order of
// cutting is recorded.
struct TrialSize {
  int blades = 50;
  int media = 4;
  int runs = 10;        // of each arm
  int checkpoints = 8;  // at least 2: the start, then evenly in logs from 1 cut to 128
  int repeats = 3;      // readings at each checkpoint
};

inline constexpr TrialSize kHundredRuns{.blades = 6, .media = 2, .runs = 10};  // 120 in 12 arms

// The same on every call.
[[nodiscard]] trials::Trial made_trial(const TrialSize& size);

[[nodiscard]] double readings_in(const trials::Trial& trial);

}  // namespace keenfall::benchmarks
