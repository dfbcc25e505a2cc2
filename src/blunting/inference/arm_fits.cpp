#include "blunting/inference/arm_fits.h"

#include <algorithm>
#include <cmath>

namespace keenfall::blunting {

namespace {

// A bound is as fuzzy as a factor of two, against readings good to some ten percent.
constexpr double kBoundWeight = 0.02;

// Variance of a checkpoint's centre relative to one reading, allowing something for the spot read.
double rough_variance(const Checkpoint& checkpoint) { return checkpoint.relative_variance + 0.1; }

std::vector<RunPoint> points_of(const RunData& run, const BluntingData& data) {
  std::vector<RunPoint> points;
  for (const Checkpoint& checkpoint : run.checkpoints) {
    const int side = data.higher_is_keener() ? 1 : -1;
    points.push_back(
        {.log_cuts = checkpoint.log_cuts,
         .log_bluntness = checkpoint.log_bluntness,
         .weight = checkpoint.below_resolution ? kBoundWeight : 1 / rough_variance(checkpoint),
         .bound = checkpoint.below_resolution ? side : 0});
  }
  return points;
}

std::vector<RunFit> fits_at(const ArmRuns& arm, double log_shape, const Pull& pull) {
  std::vector<RunFit> fits;
  for (const auto& points : arm.points) {
    fits.push_back(fit_run(points, {.fixed_shape = std::exp(log_shape), .pull = pull}));
  }
  return fits;
}

double misfit_of(const std::vector<RunFit>& fits,
                 double log_shape,
                 const PriorScales& priors,
                 double reading_sd) {
  const double z = reading_sd * (log_shape - std::log(priors.shape_centre)) / priors.log_shape_sd;
  double misfit = z * z;
  for (const RunFit& fit : fits) misfit += fit.sum_of_squares;
  return misfit;
}

// Golden-section search between 0.2 and 2 (Kiefer 1953).
double best_log_shape(const ArmRuns& arm, const Pull& pull, const PriorScales& priors) {
  constexpr double kGolden = 0.6180339887498949;
  constexpr int kSteps = 10;
  double low = std::log(0.2);
  double high = std::log(2.0);
  const auto misfit = [&](double x) {
    return misfit_of(fits_at(arm, x, pull), x, priors, pull.reading_sd);
  };
  double left = high - kGolden * (high - low);
  double right = low + kGolden * (high - low);
  double at_left = misfit(left);
  double at_right = misfit(right);
  for (int step = 0; step < kSteps; ++step) {
    if (at_left < at_right) {
      high = right;
      right = left;
      at_right = at_left;
      left = high - kGolden * (high - low);
      at_left = misfit(left);
    } else {
      low = left;
      left = right;
      at_left = at_right;
      right = low + kGolden * (high - low);
      at_right = misfit(right);
    }
  }
  return 0.5 * (low + high);
}

// The sds with which runs are drawn towards their arm's means: those of the priors' scatters.
Pull pull_to(const PriorCentres& means, const PriorScales& priors, double reading_sd) {
  return {.towards = means,
          .log_start_sd = priors.start_scatter,
          .log_half_keenness_sd = priors.run_scatter,
          .reading_sd = reading_sd};
}

PriorCentres means_of(const std::vector<RunFit>& runs) {
  PriorCentres means;
  for (const RunFit& run : runs) {
    means.log_start += run.curve.log_start / static_cast<double>(runs.size());
    means.log_half_keenness += run.curve.log_half_keenness / static_cast<double>(runs.size());
  }
  return means;
}

}  // namespace

std::vector<ArmRuns> runs_by_arm(const BluntingData& data) {
  std::vector<ArmRuns> arms(data.arms.size());
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    ArmRuns& arm = arms[data.runs[r].arm];
    arm.runs.push_back(r);
    arm.points.push_back(points_of(data.runs[r], data));
  }
  return arms;
}

double reading_variance(const std::vector<ArmRuns>& arms,
                        const PriorCentres& centres,
                        const PriorScales& priors) {
  double squares = 0;
  double freedom = 0;
  for (const ArmRuns& arm : arms) {
    const Pull pull{.towards = centres};
    for (const RunFit& run : fits_at(arm, best_log_shape(arm, pull, priors), pull)) {
      squares += run.sum_of_squares;
    }
    for (const auto& points : arm.points) freedom += static_cast<double>(points.size()) - 2;
    freedom -= 1;
  }
  return std::max(1e-4, squares / std::max(1.0, freedom));
}

ArmFit fit_arm(const ArmRuns& arm, const Pull& first, const PriorScales& priors) {
  ArmFit fit{.log_shape = best_log_shape(arm, first, priors), .pull = first};
  fit.runs = fits_at(arm, fit.log_shape, first);
  fit.means = means_of(fit.runs);
  constexpr int kRounds = 3;
  for (int round = 0; round < kRounds; ++round) {
    fit.pull = pull_to(fit.means, priors, first.reading_sd);
    fit.log_shape = best_log_shape(arm, fit.pull, priors);
    fit.runs = fits_at(arm, fit.log_shape, fit.pull);
    fit.means = means_of(fit.runs);
  }
  return fit;
}

}  // namespace keenfall::blunting
