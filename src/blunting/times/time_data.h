// One trial's edge lives by one pass-or-fail test, made ready for fitting: per run the interval
// that holds the cut at which its edge failed.
//
// Lives come as tables tell them, or from the tries on a pass ladder at one rung (ladder_lives.h).
// Struck lives and voided runs are left out; a run that cannot be used is set aside with the
// reason. Fails when no run is left. Method page: docs/methods/edge-lives.md
#pragma once

#include "base/result.h"
#include "blunting/inference/blunting_data.h"
#include "blunting/inference/run_groups.h"
#include "blunting/times/interval_likelihood.h"
#include "trials/trial.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace keenfall::blunting {

// What may share a fit: one test, or one rung of the pass ladder.
struct TestKey {
  std::string words;        // as EdgeLife::test; of a ladder, empty
  std::optional<int> rung;  // present: the pass ladder

  bool operator==(const TestKey&) const = default;
};

// The tests of the trial, those with most runs first; then its pass ladder, at its default rung.
[[nodiscard]] std::vector<TestKey> tests_of(const trials::Trial& trial);

struct TimeRun {
  std::size_t run = 0;     // index into Trial::runs; as is its place in groups.runs
  double lasted_cuts = 0;  // 0: not known to have passed
  std::optional<double> failed_by_cuts;
  std::vector<std::string> remarks;

  [[nodiscard]] LogTimeBounds log_bounds() const;
};

struct TimeData {
  TestKey test;
  std::optional<double> level;  // as EdgeLife::level, where all lives say the same
  RunGroups groups;             // of `runs`
  std::vector<TimeRun> runs;
  std::vector<RunAside> set_aside;
  double log_centre = 0;  // about the mean log time, for the priors
};

[[nodiscard]] base::Result<TimeData> prepare_times(const trials::Trial& trial, const TestKey& test);

}  // namespace keenfall::blunting
