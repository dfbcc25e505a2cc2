// What all readings of a trial say of their curves, computed for many checkpoints at once: where
// most of a fit's time goes. Private to BluntingDensity.
//
// All vectors but first_of_run and censored are as long as there are checkpoints, run after run.
// Natural logs.
#pragma once

#include "blunting/inference/blunting_data.h"

#include <cstddef>
#include <vector>

namespace keenfall::blunting {

// A checkpoint's centre has the variance spot + relative variance x one_reading.
struct ReadingVariances {
  double spot = 0;
  double one_reading = 0;
};

// The log likelihood up to a constant, and its slopes by the logs of the two variances.
struct ReadingLikelihood {
  double log_likelihood = 0;
  double by_log_spot = 0;
  double by_log_one_reading = 0;
};

struct ReadingTerms {
  // What stands in for the log of no cuts: the curve is then at its start for any shape.
  static constexpr double kLogOfNoCuts = -1e4;

  explicit ReadingTerms(const BluntingData& data);

  std::vector<std::size_t> first_of_run;  // one more than runs
  std::vector<std::size_t> censored;      // below the resolution: left out of all that is found
  // Of each checkpoint.
  std::vector<double> log_cuts;
  std::vector<double> log_bluntness;
  std::vector<double> relative_variance;
  std::vector<double> counted;  // 1, or 0 where it is censored
  // Of its run; to be put.
  std::vector<double> log_start;
  std::vector<double> log_half_keenness;
  std::vector<double> shape;

  // By robust errors (robust_errors.h), whose variances are those of the t's scale, or Gaussian
  // ones. Finds, of each checkpoint, the curve and the slopes of the log likelihood by it, by the
  // log of (cuts / half keenness)^shape, and by the shape.
  [[nodiscard]] ReadingLikelihood evaluate(bool robust, const ReadingVariances& variances);
  std::vector<double> mean;
  std::vector<double> by_mean;
  std::vector<double> by_log_power;
  std::vector<double> by_shape;

  // Factors whose logs make the log likelihood: of the t, and of the variance.
  std::vector<double> ratio;
  std::vector<double> variance;
};

}  // namespace keenfall::blunting
