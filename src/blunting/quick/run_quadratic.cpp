#include "blunting/quick/run_quadratic.h"

#include "blunting/inference/robust_errors.h"
#include "blunting/inference/tail_probability.h"

#include <algorithm>
#include <cmath>

namespace keenfall::blunting {

namespace {

constexpr double kZeroFuzzVariance = 0.6931471805599453 * 0.6931471805599453;

// Slope and information of the log likelihood by the curve's log bluntness.
struct Pulled {
  double slope = 0;
  double information = 0;
};

Pulled censored(double residual, double variance, double side, bool robust) {
  const double root = std::sqrt(variance);
  const double z = side * residual / root;
  const LogTail tail = robust ? student4_log_tail(z) : normal_log_tail(z);
  const double curvature = tail.derivative * (tail.derivative + (robust ? 0 : z));
  return {.slope = -side * tail.derivative / root,
          .information = std::max(0.0, curvature) / variance};
}

}  // namespace

RunQuadratic run_quadratic(const RunData& run,
                           const CurvePointOfRun& at,
                           const ReadingScales& scales) {
  const double shape = std::exp(at.log_shape);
  const double factor = scales.robust ? kRobustVariance : 1;
  const double spot = factor * scales.checkpoint_scatter * scales.checkpoint_scatter;
  const double reading = factor * scales.reading_scatter * scales.reading_scatter;
  RunQuadratic found;
  for (const Checkpoint& checkpoint : run.checkpoints) {
    double mean = at.log_start;
    Eigen::Vector3d slope(1, 0, 0);
    if (checkpoint.cuts > 0) {
      const double log_time = checkpoint.log_cuts - at.log_half_keenness;
      const double power = std::exp(std::min(shape * log_time, 600.0));
      const double share = power / (1 + power);
      mean += std::log1p(power);
      slope[1] = -shape * share;
      slope[2] = shape * share * log_time;
    }
    const double variance = spot + checkpoint.relative_variance * reading;
    const double residual = checkpoint.log_bluntness - mean;
    Pulled pulled;
    if (checkpoint.below_resolution) {
      pulled = censored(
          residual, variance + kZeroFuzzVariance, scales.higher_is_keener ? -1 : 1, scales.robust);
    } else {
      const double square = residual * residual / variance;
      const double weight = scales.robust ? robust_weight(square) : 1;
      pulled = {.slope = weight * residual / variance, .information = factor * weight / variance};
      found.weighted_squares += weight * square;
      ++found.readings;
    }
    found.slope += pulled.slope * slope;
    found.information += pulled.information * slope * slope.transpose();
  }
  return found;
}

}  // namespace keenfall::blunting
