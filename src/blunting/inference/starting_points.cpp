#include "blunting/inference/starting_points.h"

#include "blunting/inference/run_fit.h"
#include "numerics/summaries.h"

#include <algorithm>
#include <cmath>

namespace keenfall::blunting {

namespace {

// Typical scatters, only to weigh what the data say about a run against what its arm says.
constexpr double kTypicalRunScatter = 0.2;
constexpr double kTypicalStartScatter = 0.08;
constexpr double kTypicalShapeScatter = 0.1;
constexpr double kTypicalReadingScatter = 0.1;
constexpr double kTypicalBlockScatter = 0.1;
constexpr double kMiddleShape = 0.8;

// Nearly 1 where the data say more than the scatter does, nearly 0 where they say less.
double centring_for(double scatter, double standard_error) {
  const double ratio = standard_error / scatter;
  return 1 / (1 + ratio * ratio * ratio * ratio);
}

std::vector<RunPoint> points_of(const RunData& run) {
  std::vector<RunPoint> points;
  for (const Checkpoint& checkpoint : run.checkpoints) {
    if (checkpoint.below_resolution) continue;
    points.push_back({.log_cuts = checkpoint.log_cuts,
                      .log_bluntness = checkpoint.log_bluntness,
                      .weight = 1 / (checkpoint.relative_variance + 0.1)});
  }
  return points;
}

double mean_over_arm(const std::vector<double>& per_run,
                     const BluntingData& data,
                     std::size_t arm) {
  double sum = 0;
  double count = 0;
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    if (data.runs[r].arm == arm) sum += per_run[r], ++count;
  }
  return sum / count;
}

// The pooled sd of the runs about their arms' means, within bounds.
double scatter_about_arms(const std::vector<double>& per_run,
                          const BluntingData& data,
                          double smallest,
                          double largest) {
  double squares = 0;
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    const double deviation = per_run[r] - mean_over_arm(per_run, data, data.runs[r].arm);
    squares += deviation * deviation;
  }
  const double freedom =
      static_cast<double>(data.runs.size()) - static_cast<double>(data.arms.size());
  const double scatter = freedom > 0 ? std::sqrt(squares / freedom) : smallest;
  return std::clamp(scatter, smallest, largest);
}

// z such that scattered(z, centre, log_s, w).level(centre) is the level.
double scattered_coordinate(double level, double centre, double log_s, double w) {
  return w * centre + (level - centre) * std::exp(-(1 - w) * log_s);
}

}  // namespace

StartingPoints starting_points(const BluntingData& data, const ModelSpec& spec) {
  StartingPoints points;
  const PriorCentres centres = spec.centres.value_or(data.data_centres);
  std::vector<double> arm_information(data.arms.size());
  for (const RunData& run : data.runs) {
    const RunFit fit = fit_run(points_of(run),
                               {.fixed_shape = spec.priors.shape_centre,
                                .pulled_towards = centres,
                                .reading_sd = kTypicalReadingScatter});
    // The errors the runs would have at the typical scatter, not at their own few residuals.
    double start_error = 1;
    double half_error = 2;
    if (fit.standard_errors.size() == 2 && fit.residual_sd > 0) {
      const double rescale = kTypicalReadingScatter / fit.residual_sd;
      start_error = fit.standard_errors[0] * rescale;
      half_error = fit.standard_errors[1] * rescale;
    }
    points.run_start.push_back(
        std::clamp(fit.curve.log_start, centres.log_start - 4, centres.log_start + 4));
    points.run_half.push_back(std::clamp(
        fit.curve.log_half_keenness, centres.log_half_keenness - 5, centres.log_half_keenness + 5));
    points.centring.run_start.push_back(centring_for(kTypicalStartScatter, start_error));
    points.centring.run_half.push_back(centring_for(kTypicalRunScatter, half_error));
    // A shape is told about as well as half keenness is, by all runs of the arm together.
    arm_information[run.arm] += 1 / (half_error * half_error);
  }
  for (const double information : arm_information) {
    points.centring.shape.push_back(
        centring_for(kTypicalShapeScatter, 0.5 / std::sqrt(information)));
  }
  return points;
}

std::vector<double> starting_point(const StartingPoints& points, const BluntingDensity& density) {
  const ParameterLayout& at = density.layout();
  const BluntingData& data = density.data();
  std::vector<double> q(at.dimension);
  for (std::size_t a = 0; a < at.arms; ++a) {
    q[at.start_mean + a] = mean_over_arm(points.run_start, data, a);
    q[at.half_mean + a] = mean_over_arm(points.run_half, data, a);
  }
  q[at.log_start_scatter] = std::log(scatter_about_arms(points.run_start, data, 0.05, 0.3));
  const double run_scatter = scatter_about_arms(points.run_half, data, 0.1, 0.6);
  for (std::size_t s = 0; s < at.scatters; ++s) q[at.log_run_scatter + s] = std::log(run_scatter);
  const double repeat_sd =
      data.repeat_degrees_of_freedom > 0
          ? std::sqrt(data.repeat_sum_of_squares / data.repeat_degrees_of_freedom)
          : 0;
  q[at.log_reading_scatter] = std::log(repeat_sd > 0 ? repeat_sd : points.checkpoint_sd);
  if (at.has_checkpoint_scatter)
    q[at.log_checkpoint_scatter] = std::log(0.3 * points.checkpoint_sd);
  if (at.block_count > 0) q[at.log_block_scatter] = std::log(kTypicalBlockScatter);
  if (at.specimen_count > 0) q[at.log_specimen_scatter] = std::log(kTypicalBlockScatter);
  if (at.has_shape_level) {
    q[at.log_shape_scatter] = std::log(kTypicalShapeScatter);
    for (std::size_t m = 0; m < at.media; ++m) q[at.shape_mean + m] = std::log(kMiddleShape);
  }
  for (std::size_t a = 0; a < at.arms; ++a) {
    // Shared: a level at its centre. Plain: the logit of the middle shape between 0.2 and 2.
    q[at.shape + a] = at.has_shape_level ? points.centring.shape[a] * std::log(kMiddleShape)
                                         : std::log((kMiddleShape - 0.2) / (2 - kMiddleShape));
  }
  for (std::size_t r = 0; r < at.runs; ++r) {
    const RunData& run = data.runs[r];
    const std::size_t scatter = at.scatters > 1 ? run.medium : 0;
    q[at.run_start + r] = scattered_coordinate(points.run_start[r],
                                               q[at.start_mean + run.arm],
                                               q[at.log_start_scatter],
                                               points.centring.run_start[r]);
    q[at.run_half + r] = scattered_coordinate(points.run_half[r],
                                              q[at.half_mean + run.arm],
                                              q[at.log_run_scatter + scatter],
                                              points.centring.run_half[r]);
  }
  return q;
}

}  // namespace keenfall::blunting
