// A plan that looks at its results more than once, and how much wider its intervals must be for
// that.
//
// Whoever looks after 3, 6 and 9 runs and stops at the first answer is wrong more often than
// whoever looks once. All intervals of such a plan are stretched by one factor (Pocock 1977), found
// by simulation for this very plan: runs per look, number of arms, and the posterior's own
// small-sample widths. With it the chance that any look gives a false "longer or shorter" is 5 %,
// and of a false "practically the same" for a ratio at the margin 5 %. Method page:
// docs/methods/planned-looks.md
#pragma once

#include "base/seed.h"
#include "verdicts/verdict.h"

#include <vector>

namespace keenfall::verdicts {

struct LooksPlan {
  std::vector<int> runs_each;  // of every arm at each look: rising, at least 2, at most 1000
  int arms = 2;                // compared with one another, at least 2
};

struct LookStretch {
  double at_95 = 1;  // how many times as wide as a single look's, in logs; at least 1
  double at_90 = 1;

  bool operator==(const LookStretch&) const = default;
};

// The same plan and seed give the same factors. Takes some 50 ms.
[[nodiscard]] LookStretch stretch_for_looks(const LooksPlan& plan, base::Seed seed);

// Bounds of a ratio stretched about its median.
[[nodiscard]] RatioBounds stretched(const RatioBounds& bounds,
                                    double median,
                                    const LookStretch& stretch);

// How often an unadjusted 95 % interval would exclude equality at one look or more, at this scatter
// from run to run (log sd), where the edges last equally long. For the method page and tests.
[[nodiscard]] double false_answers_unadjusted(const LooksPlan& plan,
                                              double run_scatter,
                                              base::Seed seed);

}  // namespace keenfall::verdicts
