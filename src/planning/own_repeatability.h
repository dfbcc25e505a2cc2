// The guided first trial: how much do your own runs scatter?
//
// One blade, one edge, one lot, three runs, each a sharpening anew. From its judgement comes the
// run-to-run scatter, with its interval, to be assumed of what is planned afterwards; three runs
// tell it roughly, and better than anybody's guess. Log sd.
#pragma once

#include "base/result.h"
#include "planning/assumptions.h"
#include "trials/plan.h"
#include "verdicts/judgement.h"

#include <cstddef>
#include <string>

namespace keenfall::planning {

struct OwnRepeatability {
  std::string blade;
  trials::EdgePreparation edge;
  trials::Medium medium;
  std::string lot;
  trials::CutMethod method;
  trials::PlannedReading reading;
};

inline constexpr int kOwnRuns = 3;

// Ready to be cut: doubles and one to 127, stopped at 4 times the start (common practice, no
// source).
[[nodiscard]] trials::Plan own_repeatability_plan(const OwnRepeatability& with);

// What it claims: that the scatter is that of careful work, 0.30 or less.
[[nodiscard]] trials::Claim own_repeatability_claim(const OwnRepeatability& with);

struct OwnScatter {
  double run_log_sd = 0;  // posterior median
  double lo95 = 0;
  double hi95 = 0;
  int runs = 0;
  ExpectedCutting expected;  // to be assumed from now on: half keenness, shape and this scatter
  double start_reading = 0;

  bool operator==(const OwnScatter&) const = default;
};

// From the arm of a judgement; any trial will do that has two runs of it or more. Refuses where the
// fit is not usable, or the arm was not read.
[[nodiscard]] base::Result<OwnScatter> own_scatter(const verdicts::Judgement& judgement,
                                                   std::size_t arm);

// What a plan is given of it, as figures that a person would type: scatter and half keenness to two
// figures.
[[nodiscard]] ExpectedCutting to_be_assumed(const OwnScatter& scatter);

// "18 %", and its 95 % interval: "9 % to 47 %".
[[nodiscard]] std::string percent_of(const OwnScatter& scatter);
[[nodiscard]] std::string interval_of(const OwnScatter& scatter);

// "Your runs of A scatter by 18 % (95 % interval 9 to 47 %), told by 3 runs: ..."
[[nodiscard]] std::string in_words(const OwnScatter& scatter, const std::string& blade);

}  // namespace keenfall::planning
