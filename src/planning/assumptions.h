// What is taken for granted of a trial that is not cut yet: how long edges will last, and how much
// runs, starts, blocks, pieces and readings will scatter. All scatters are standard deviations of
// natural logs.
//
// Every number is a guess until somebody has measured his own (own_repeatability.h), and is shown
// beside whatever was computed from it. The defaults are common practice without a source.
#pragma once

#include "base/result.h"
#include "blunting/curves/log_logistic.h"
#include "trials/plan.h"

#include <cstddef>
#include <span>
#include <string_view>
#include <vector>

namespace keenfall::planning {

// How runs are made, which is what mostly makes them scatter.
enum class Care { guided_one_lot, careful_freehand, gritty_stock, mixed_days };

// Run-to-run log sd of half keenness (common practice, no source).
struct UsualScatter {
  double least = 0;
  double usual = 0;  // their middle
  double most = 0;
};

[[nodiscard]] UsualScatter usual_run_scatter(Care care);
[[nodiscard]] std::string_view in_words(Care care);

struct ExpectedCutting {
  double half_keenness_cuts = 40;  // of a middling arm; above 0
  double shape = 0.75;             // p of the curve; 0.2 to 2, usually 0.5 to 0.8
  double run_log_sd = 0.20;        // where guided and freehand meet

  bool operator==(const ExpectedCutting&) const = default;
};

struct Assumptions {
  std::vector<ExpectedCutting> cuttings;  // as Plan::cuttings
  // How many times as long the longest-lasting arm of a cutting lasts as its shortest-lasting; the
  // others lie between, evenly in logs.
  double true_ratio = 1.5;
  double start_reading = 104;  // in the unit that is read
  double start_log_sd = 0.06;
  double block_log_sd = 0.06;
  double specimen_log_sd = 0.10;  // between pieces of one blade, where it has several
  double spot_log_sd = 0.025;     // of the spot read, at each checkpoint
  double reading_log_sd = 0.09;   // of one reading: 9 %

  bool operator==(const Assumptions&) const = default;
};

// The usual, with half keenness where the checkpoints look for it and the gate's target as start.
[[nodiscard]] Assumptions usual_assumptions(const trials::Plan& plan);

// Between which checkpoints half keenness is looked for: two lie beyond. Of cuts, above 0.
[[nodiscard]] double half_keenness_looked_for(std::span<const double> checkpoint_cuts);

// Numbers out of their ranges, or of another number of cuttings than the plan's.
[[nodiscard]] std::vector<base::Problem> problems_of(const Assumptions& assumptions,
                                                     const trials::Plan& plan);

// What the runs of an arm scatter about. The first arm of a cutting is taken to last longest.
[[nodiscard]] blunting::LogLogistic expected_curve(const trials::Plan& plan,
                                                   const Assumptions& assumptions,
                                                   std::size_t arm);

}  // namespace keenfall::planning
