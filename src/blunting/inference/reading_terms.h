// What all readings of a trial say of their curves, computed for many checkpoints at once: where
// most of a fit's time goes. Private to BluntingDensity.
//
// All vectors are as long as there are checkpoints, run after run. Natural logs.
#pragma once

#include "blunting/inference/blunting_data.h"

#include <cstddef>
#include <vector>

namespace keenfall::blunting {

struct ReadingTerms {
  // What stands in for the log of no cuts: the curve is then at its start for any shape.
  static constexpr double kLogOfNoCuts = -1e4;

  explicit ReadingTerms(const BluntingData& data);

  // Of each checkpoint.
  std::vector<double> log_cuts;
  std::vector<double> log_bluntness;
  std::vector<double> precision;  // of the centre; 0 where the checkpoint is not to count here
  // Of its run.
  std::vector<double> log_start;
  std::vector<double> log_half_keenness;
  std::vector<double> shape;

  // By robust errors (robust_errors.h) or Gaussian ones: the log likelihood but for the factors of
  // the precisions. Finds, of each checkpoint:
  [[nodiscard]] double evaluate(bool robust);
  std::vector<double> mean;              // the curve
  std::vector<double> by_mean;           // slope of the log likelihood by the curve
  std::vector<double> by_log_power;      // by the log of (cuts / half keenness)^shape
  std::vector<double> by_shape;          // by the shape
  std::vector<double> weighted_squares;  // of residuals in standard errors
  std::vector<double> ratio;             // robustly: 1 + square / 4, whose logs make the likelihood
};

}  // namespace keenfall::blunting
