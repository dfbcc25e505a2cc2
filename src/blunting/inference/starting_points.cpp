#include "blunting/inference/starting_points.h"

#include "blunting/inference/run_fit.h"
#include "numerics/random.h"
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

// The share of the prior's variance in prior plus data: 1 when the data say everything.
double centring_for(double scatter, double standard_error) {
  const double prior = scatter * scatter;
  return prior / (prior + standard_error * standard_error);
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

// z such that Scattered(z, centre, log_s, w).level(centre) is the level.
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

std::vector<double> jittered_start(const StartingPoints& points,
                                   const BluntingData& data,
                                   const BluntingDensity& density,
                                   base::Seed seed,
                                   std::uint64_t chain) {
  constexpr std::uint64_t kStartStream = 1000;  // apart from the chains' own streams
  numerics::RandomStream random(seed, kStartStream + chain);
  const auto jitter = [&random](double size) { return size * (2 * random.uniform() - 1); };
  const ParameterLayout& at = density.layout();
  std::vector<double> q(at.dimension);
  for (std::size_t a = 0; a < at.arms; ++a) {
    q[at.start_mean + a] = mean_over_arm(points.run_start, data, a) + jitter(0.1);
    q[at.half_mean + a] = mean_over_arm(points.run_half, data, a) + jitter(0.2);
  }
  q[at.log_start_scatter] = std::log(0.08) + jitter(0.5);
  q[at.log_reading_scatter] = std::log(0.1) + jitter(0.3);
  for (std::size_t s = 0; s < at.scatters; ++s) {
    q[at.log_run_scatter + s] = std::log(0.25) + jitter(0.5);
  }
  if (at.has_checkpoint_scatter) q[at.log_checkpoint_scatter] = std::log(0.04) + jitter(0.5);
  if (at.block_count > 0) q[at.log_block_scatter] = std::log(0.08) + jitter(0.5);
  for (std::size_t b = 0; b < at.block_count; ++b) q[at.block + b] = jitter(0.3);
  if (at.specimen_count > 0) q[at.log_specimen_scatter] = std::log(0.1) + jitter(0.5);
  for (std::size_t s = 0; s < at.specimen_count; ++s) q[at.specimen + s] = jitter(0.3);

  if (at.has_shape_level) q[at.log_shape_scatter] = std::log(0.1) + jitter(0.5);
  for (std::size_t m = 0; at.has_shape_level && m < at.media; ++m) {
    q[at.shape_mean + m] = std::log(0.8) + jitter(0.2);
  }
  for (std::size_t a = 0; a < at.arms; ++a) {
    if (at.has_shape_level) {
      const double centre = q[at.shape_mean + data.medium_of_arm[a]];
      q[at.shape + a] = scattered_coordinate(
          centre + jitter(0.1), centre, q[at.log_shape_scatter], points.centring.shape[a]);
    } else {
      q[at.shape + a] = std::log(0.5) + jitter(0.4);  // a shape of about 0.8
    }
  }
  for (std::size_t r = 0; r < at.runs; ++r) {
    const RunData& run = data.runs[r];
    const std::size_t scatter = at.scatters > 1 ? run.medium : 0;
    q[at.run_start + r] = scattered_coordinate(points.run_start[r] + jitter(0.05),
                                               q[at.start_mean + run.arm],
                                               q[at.log_start_scatter],
                                               points.centring.run_start[r]);
    q[at.run_half + r] = scattered_coordinate(points.run_half[r] + jitter(0.1),
                                              q[at.half_mean + run.arm],
                                              q[at.log_run_scatter + scatter],
                                              points.centring.run_half[r]);
  }
  return q;
}

}  // namespace keenfall::blunting
