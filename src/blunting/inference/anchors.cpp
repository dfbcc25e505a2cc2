#include "blunting/inference/anchors.h"

#include "blunting/inference/run_fit.h"

#include <algorithm>
#include <array>
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

struct ArmRuns {
  std::vector<std::size_t> runs;
  std::vector<std::vector<RunPoint>> points;
};

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

// An arm's runs as a hierarchical model would place them: drawn towards their own means.
struct ArmFit {
  double log_shape = 0;
  PriorCentres means;
  Pull pull;  // that the runs were fitted with
  std::vector<RunFit> runs;
};

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

// Information of one run's readings on (log b0, log tau, log p), at unit variance of a reading.
using Information = std::array<std::array<double, 3>, 3>;

Information information_of(const std::vector<RunPoint>& points, const LogLogistic& curve) {
  Information information{};
  for (const RunPoint& point : points) {
    const double excess = log_bluntness(curve, point.log_cuts) - point.log_bluntness;
    if (point.bound * excess > 0) continue;  // a bound that is kept
    std::array<double, 3> slope{1, 0, 0};
    if (std::isfinite(point.log_cuts)) {
      const double log_time = point.log_cuts - curve.log_half_keenness;
      const double share = 1 / (1 + std::exp(-curve.shape * log_time));
      slope[1] = -curve.shape * share;
      slope[2] = curve.shape * share * log_time;
    }
    for (std::size_t i = 0; i < 3; ++i) {
      for (std::size_t j = 0; j < 3; ++j) information[i][j] += point.weight * slope[i] * slope[j];
    }
  }
  return information;
}

struct RunAnchorWithShape {
  RunAnchor run;
  LogLogistic curve;
  double start_information = 0;  // as `run`, also where too little to anchor to
  double half_information = 0;   // log b0 left free
  double shape_information = 0;  // log b0 and log tau free within the pull
  double start_by_shape = 0;     // within the pull
  double half_by_shape = 0;
};

RunAnchorWithShape anchor_of(const LogLogistic& curve,
                             const Information& unit,
                             const Pull& pull,
                             double variance) {
  const double bb = unit[0][0] / variance;
  const double bt = unit[0][1] / variance;
  const double bp = unit[0][2] / variance;
  const double tt = unit[1][1] / variance;
  const double tp = unit[1][2] / variance;
  const double pp = unit[2][2] / variance;
  const double start_prior = 1 / (pull.log_start_sd * pull.log_start_sd);
  const double half_prior = 1 / (pull.log_half_keenness_sd * pull.log_half_keenness_sd);
  // At the pulled fit the readings' slope balances the pull's.
  const double start_slope = start_prior * (curve.log_start - pull.towards.log_start);
  const double half_slope = half_prior * (curve.log_half_keenness - pull.towards.log_half_keenness);

  RunAnchorWithShape anchor{.curve = curve};
  anchor.run.at_start = curve.log_start;
  anchor.run.start.level = curve.log_start;
  anchor.run.half.level = curve.log_half_keenness;
  if (tt > 0.01) {
    anchor.run.half.information = tt;
    anchor.run.half.level += half_slope / tt;
    anchor.run.half_by_start = -bt / tt;
    anchor.run.half_by_shape = -tp / tt;
  }
  const double determinant = bb * tt - bt * bt;
  const double start_alone = tt > 0.01 ? determinant / tt : bb;
  anchor.start_information = start_alone;
  if (start_alone > 0.5 * start_prior) {
    anchor.run.start.information = start_alone;
    const double shifted = tt > 0.01 ? start_slope - bt / tt * half_slope : start_slope;
    anchor.run.start.level += shifted / start_alone;
    if (tt > 0.01) anchor.run.start_by_shape = -(tt * bp - bt * tp) / determinant;
  }
  anchor.half_information = bb > 0 ? determinant / bb : 0;

  const double pulled_bb = bb + start_prior;
  const double pulled_tt = tt + half_prior;
  const double pulled = pulled_bb * pulled_tt - bt * bt;
  anchor.start_by_shape = -(pulled_tt * bp - bt * tp) / pulled;
  anchor.half_by_shape = -(pulled_bb * tp - bt * bp) / pulled;
  anchor.shape_information =
      std::max(0.0, pp + bp * anchor.start_by_shape + tp * anchor.half_by_shape);
  return anchor;
}

std::vector<ArmRuns> runs_by_arm(const BluntingData& data) {
  std::vector<ArmRuns> arms(data.arms.size());
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    ArmRuns& arm = arms[data.runs[r].arm];
    arm.runs.push_back(r);
    arm.points.push_back(points_of(data.runs[r], data));
  }
  return arms;
}

constexpr double kLargestError = 4;  // variance of a run that says next to nothing

// Mean over the runs of an arm, of their levels and of their errors.
ArmAnchor arm_anchor(const std::vector<RunAnchorWithShape>& runs, const ArmFit& fit) {
  ArmAnchor arm;
  const double count = static_cast<double>(runs.size());
  arm.start = {.level = fit.means.log_start, .count = count};
  arm.half = {.level = fit.means.log_half_keenness, .count = count};
  arm.shape.level = fit.log_shape;
  for (const RunAnchorWithShape& run : runs) {
    const auto error = [](double information) {
      return std::min(kLargestError, information > 0 ? 1 / information : kLargestError);
    };
    arm.start.error += error(run.start_information) / count;
    arm.half.error += error(run.half_information) / count;
    arm.start_by_shape += run.start_by_shape / count;
    arm.half_by_shape += run.half_by_shape / count;
    arm.shape.information += run.shape_information;
  }
  return arm;
}

// The pooled sd of the runs' curves about their arms' means.
double scatter_about_arms(const std::vector<ArmFit>& arms, double LogLogistic::*level) {
  double squares = 0;
  double freedom = 0;
  for (const ArmFit& arm : arms) {
    double mean = 0;
    for (const RunFit& run : arm.runs)
      mean += run.curve.*level / static_cast<double>(arm.runs.size());
    for (const RunFit& run : arm.runs)
      squares += (run.curve.*level - mean) * (run.curve.*level - mean);
    freedom += static_cast<double>(arm.runs.size()) - 1;
  }
  return freedom > 0 ? std::sqrt(squares / freedom) : 0;
}

// A block or specimen: the mean of its runs' deviations, as well known as run scatter allows.
std::vector<Anchor> group_anchors(const BluntingData& data,
                                  const Anchors& anchors,
                                  std::size_t groups,
                                  std::optional<std::size_t> RunData::*group) {
  std::vector<Anchor> found(groups);
  std::vector<double> counts(groups);
  for (std::size_t r = 0; groups > 0 && r < data.runs.size(); ++r) {
    const RunData& run = data.runs[r];
    if (!(run.*group)) continue;
    found[*(run.*group)].level += anchors.runs[r].half.level - anchors.arms[run.arm].half.level;
    ++counts[*(run.*group)];
  }
  const double each = anchors.scatters.run * anchors.scatters.run;
  for (std::size_t g = 0; g < groups; ++g) {
    if (counts[g] == 0) continue;
    found[g].level /= counts[g];
    found[g].information = counts[g] / each;
  }
  return found;
}

std::vector<MeanAnchor> shape_means_of(const BluntingData& data, const Anchors& anchors) {
  std::vector<MeanAnchor> means(data.media.size(), MeanAnchor{.count = 0});
  for (std::size_t a = 0; a < data.arms.size(); ++a) {
    MeanAnchor& mean = means[data.medium_of_arm[a]];
    const Anchor& shape = anchors.arms[a].shape;
    mean.level += shape.level;
    mean.error += std::min(0.25, shape.information > 0 ? 1 / shape.information : 0.25);
    ++mean.count;
  }
  for (MeanAnchor& mean : means) {
    mean.level /= mean.count;
    mean.error /= mean.count;
  }
  return means;
}

// One reading's variance about the curves; at least that of one percent, for readings without
// scatter.
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

}  // namespace

Anchors anchors_for(const BluntingData& data,
                    const ModelSpec& spec,
                    const ParameterLayout& layout) {
  const PriorCentres centres = spec.centres.value_or(data.data_centres);
  const std::vector<ArmRuns> arms = runs_by_arm(data);
  const double variance = reading_variance(arms, centres, spec.priors);
  std::vector<ArmFit> fits;
  for (const ArmRuns& arm : arms) {
    fits.push_back(
        fit_arm(arm, {.towards = centres, .reading_sd = std::sqrt(variance)}, spec.priors));
  }
  Anchors anchors;
  anchors.runs.resize(data.runs.size());
  for (std::size_t a = 0; a < arms.size(); ++a) {
    std::vector<RunAnchorWithShape> with_shape;
    for (std::size_t i = 0; i < arms[a].runs.size(); ++i) {
      const LogLogistic& curve = fits[a].runs[i].curve;
      with_shape.push_back(
          anchor_of(curve, information_of(arms[a].points[i], curve), fits[a].pull, variance));
      anchors.runs[arms[a].runs[i]] = with_shape.back().run;
    }
    anchors.arms.push_back(arm_anchor(with_shape, fits[a]));
  }
  anchors.shape_means = shape_means_of(data, anchors);
  const double repeat_sd =
      data.repeat_degrees_of_freedom > 0
          ? std::sqrt(data.repeat_sum_of_squares / data.repeat_degrees_of_freedom)
          : 0;
  anchors.scatters = {
      .start = std::clamp(scatter_about_arms(fits, &LogLogistic::log_start), 0.03, 0.4),
      .run = std::clamp(scatter_about_arms(fits, &LogLogistic::log_half_keenness), 0.08, 0.7),
      .reading = repeat_sd > 0 ? repeat_sd : std::sqrt(variance),
      .checkpoint = 0.2 * std::sqrt(variance)};
  anchors.blocks = group_anchors(data, anchors, layout.block_count, &RunData::block);
  anchors.specimens = group_anchors(data, anchors, layout.specimen_count, &RunData::specimen);
  return anchors;
}

}  // namespace keenfall::blunting
