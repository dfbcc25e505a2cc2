// One run's curve by least squares: the start of every fuller answer.
#pragma once

#include "blunting/curves/log_logistic.h"
#include "blunting/inference/model_spec.h"

#include <optional>
#include <span>
#include <vector>

namespace keenfall::blunting {

struct RunPoint {
  double log_cuts = 0;  // -infinity at the start
  double log_bluntness = 0;
  double weight = 1;  // 1 / relative variance
  // -1: the bluntness is at most log_bluntness (below the resolution); 1: at least; 0: as read.
  int bound = 0;
};

// Draws a run's start and half keenness towards a point, so that a flat run still has an answer.
struct Pull {
  PriorCentres towards;
  double log_start_sd = 1.5;
  double log_half_keenness_sd = 2;
  double reading_sd = 0.1;  // of one log reading, against which the pull is weighed
};

struct RunFitOptions {
  std::optional<double> fixed_shape;  // absent: fitted
  std::optional<Pull> pull;
};

struct RunFit {
  bool converged = false;
  LogLogistic curve;
  // Standard errors of log_start, log_half_keenness and shape (0 when fixed); empty when the points
  // do not determine the curve.
  std::vector<double> standard_errors;
  double residual_sd = 0;
  double sum_of_squares = 0;  // with the pull's, where there is one
};

// At least one more point (or pull) than there are parameters, and at least two different cuts.
[[nodiscard]] RunFit fit_run(std::span<const RunPoint> points, const RunFitOptions& options);

}  // namespace keenfall::blunting
