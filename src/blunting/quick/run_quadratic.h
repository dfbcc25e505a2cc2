// The log likelihood of one run's readings as a parabola in (log b0, log tau, log p) about a point.
//
// Robust readings weigh what they weigh at the point (iteratively reweighted least squares); their
// information is that weight over the checkpoint's variance, which on normal readings is on average
// the curvature of Student's t at this scale (1.000 by integration).
#pragma once

#include "blunting/inference/blunting_data.h"

#include <Eigen/Dense>

namespace keenfall::blunting {

struct ReadingScales {
  double reading_scatter = 0.1;   // sd of one log reading
  double checkpoint_scatter = 0;  // of the spot that was read
  bool robust = false;
  bool higher_is_keener = false;
};

struct CurvePointOfRun {
  double log_start = 0;
  double log_half_keenness = 0;
  double log_shape = 0;
};

struct RunQuadratic {
  Eigen::Vector3d slope = Eigen::Vector3d::Zero();
  Eigen::Matrix3d information = Eigen::Matrix3d::Zero();
  double weighted_squares = 0;  // of standardised residuals, censored ones apart
  int readings = 0;             // checkpoints in weighted_squares
};

[[nodiscard]] RunQuadratic run_quadratic(const RunData& run,
                                         const CurvePointOfRun& at,
                                         const ReadingScales& scales);

}  // namespace keenfall::blunting
