#include "blunting/inference/run_fit.h"

#include "numerics/least_squares.h"
#include "numerics/summaries.h"

#include <algorithm>
#include <cmath>

namespace keenfall::blunting {

namespace {

LogLogistic first_guess(std::span<const RunPoint> points, double shape) {
  std::vector<RunPoint> sorted(points.begin(), points.end());
  std::ranges::sort(sorted, {}, &RunPoint::log_cuts);
  const double start = sorted.front().log_bluntness;
  const double last = sorted.back().log_bluntness;
  double half = sorted.back().log_cuts + 1;
  for (const RunPoint& point : sorted) {
    if (point.log_bluntness - start > std::log(2) && std::isfinite(point.log_cuts)) {
      half = point.log_cuts;
      break;
    }
  }
  return {.log_start = std::min(start, last), .log_half_keenness = half, .shape = shape};
}

}  // namespace

RunFit fit_run(std::span<const RunPoint> points, const RunFitOptions& options) {
  const bool shape_is_free = !options.fixed_shape;
  const std::size_t inputs = shape_is_free ? 3 : 2;
  const std::size_t pulls = options.pull ? 2 : 0;
  const auto curve_of = [&options](std::span<const double> parameters) {
    return LogLogistic{
        parameters[0], parameters[1], options.fixed_shape ? *options.fixed_shape : parameters[2]};
  };
  const auto residuals =
      [&](std::span<const double> parameters, std::span<double> out, std::span<double> jacobian) {
        const LogLogistic curve = curve_of(parameters);
        std::ranges::fill(jacobian, 0.0);
        for (std::size_t i = 0; i < points.size(); ++i) {
          const double root_weight = std::sqrt(points[i].weight);
          const double excess = log_bluntness(curve, points[i].log_cuts) - points[i].log_bluntness;
          // A bound that is kept says nothing.
          const bool kept = points[i].bound * excess > 0;
          out[i] = kept ? 0 : root_weight * excess;
          if (kept) continue;
          if (jacobian.empty()) continue;
          double* row = &jacobian[i * inputs];
          row[0] = root_weight;
          if (!std::isfinite(points[i].log_cuts)) continue;
          const double log_time = points[i].log_cuts - curve.log_half_keenness;
          const double share = 1 / (1 + std::exp(-curve.shape * log_time));
          row[1] = -root_weight * curve.shape * share;
          if (shape_is_free) row[2] = root_weight * share * log_time;
        }
        if (!options.pull) return;
        const Pull& pull = *options.pull;
        const double strength_start = pull.reading_sd / pull.log_start_sd;
        const double strength_half = pull.reading_sd / pull.log_half_keenness_sd;
        const std::size_t n = points.size();
        out[n] = strength_start * (parameters[0] - pull.towards.log_start);
        out[n + 1] = strength_half * (parameters[1] - pull.towards.log_half_keenness);
        if (jacobian.empty()) return;
        jacobian[n * inputs] = strength_start;
        jacobian[(n + 1) * inputs + 1] = strength_half;
      };

  const LogLogistic guess = first_guess(points, options.fixed_shape.value_or(0.8));
  std::vector<double> start{guess.log_start, guess.log_half_keenness};
  if (shape_is_free) start.push_back(guess.shape);
  const numerics::LeastSquaresFit fit =
      numerics::fit_least_squares(residuals, points.size() + pulls, start);
  return {.converged = fit.converged,
          .curve = curve_of(fit.parameters),
          .standard_errors = fit.standard_errors,
          .residual_sd = fit.residual_sd,
          .sum_of_squares = fit.sum_of_squares};
}

}  // namespace keenfall::blunting
