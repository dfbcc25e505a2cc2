// Trials of two blades, A and B, made from a known truth: for tests, and for showing how often the
// engines are right.
//
// Thread push readings in gf at 0 to 127 cuts, starting near 104 gf; B's half keenness is 40 cuts,
// its shape 0.75 against A's 0.7. What is unusual about a trial is a field here; scatters are
// standard deviations of natural logs.
#pragma once

#include "blunting/curves/log_logistic.h"
#include "blunting/simulated_run.h"
#include "trials/trial.h"

#include <cstdint>
#include <optional>
#include <string_view>

namespace keenfall::blunting {

struct Truth {
  double ratio = 1;  // of A's half keenness to B's 40 cuts
  int runs_each = 4;
  double run_scatter = 0.25;
  double start_scatter = 0.06;
  double start_effect = 0;  // of a run's log start on its log half keenness
  double order_drift = 0;   // of log half keenness over the trial; runs are cut in shuffled order
  double slip_every = 0;    // every so many readings one is ten times too large; 0: never
  int specimens_each = 0;   // pieces that the runs are cut with in turn; 0: one, unnamed
  double specimen_scatter = 0;  // sd of log half keenness between pieces of one blade
  int blocks = 0;               // that the runs of each blade are spread over in turn; 0: none
  double block_scatter = 0;     // sd of log half keenness between blocks
  ReadingNoise noise{.reading_scatter = 0.1};
  std::optional<double> stop_level = 4;  // a run stops once its mean reading is so many times its
                                         // first; absent: every run goes on to 127 cuts
  double outlier_ratio = 1;  // one reading of the trial is so many times too large or too small
  double start_ratio = 1;    // of A's start to B's
  double shape_scatter = 0;  // of log shape, from run to run of one blade
  std::optional<double> run_tail_degrees_of_freedom;  // of the runs, as ReadingNoise's of readings
  std::optional<double> run_scatter_b;                // B's, where it is not A's
  std::optional<double> run_scatter_manila;  // cut on manila as well as on sisal, scattering so
};

// The same truth and seed give the same trial. Runs of A stand before those of B.
[[nodiscard]] trials::Trial simulated(const Truth& truth, std::uint64_t seed);

// What the runs of a blade, "A" or "B", scatter about.
[[nodiscard]] LogLogistic true_curve(const Truth& truth, std::string_view blade);

}  // namespace keenfall::blunting
