// A look at two arms without the joint model: each run's own least-squares curve gives one number,
// and the numbers of the two arms are rearranged. Modest beside the verdict, never the verdict.
//
// Per run: log cuts to the level compared at, by a curve with a shape of its own where the run has
// five checkpoints, else with its arm's. p: exact where arrangements are few enough, else by random
// ones. Where runs of the two arms stand in shared blocks, the mean difference within each block is
// ranked too (signed ranks). Values only; each_run.h finds them. Method page:
// docs/methods/run-by-run.md
#pragma once

#include <optional>

namespace keenfall::verdicts {

struct SignedRanks {
  int blocks = 0;  // with runs of both arms
  double p = 1;
  double smallest_possible_p = 1;

  bool operator==(const SignedRanks&) const = default;
};

struct RunByRun {
  int runs_a = 0;  // with a curve of their own
  int runs_b = 0;
  int runs_left_out = 0;  // whose readings do not determine one
  double ratio = 1;       // of the geometric means
  double p = 1;           // two-sided, of the difference of mean logs
  bool exact = true;
  double monte_carlo_error = 0;
  double smallest_possible_p = 0;
  std::optional<SignedRanks> by_blocks;  // where at least two blocks hold both

  bool operator==(const RunByRun&) const = default;
};

}  // namespace keenfall::verdicts
