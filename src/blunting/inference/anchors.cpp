#include "blunting/inference/anchors.h"

#include "blunting/inference/run_fit.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace keenfall::blunting {

namespace {

// Variance of a checkpoint's centre relative to one reading, allowing something for the spot read.
double rough_variance(const Checkpoint& checkpoint) { return checkpoint.relative_variance + 0.1; }

std::vector<RunPoint> points_of(const RunData& run) {
  std::vector<RunPoint> points;
  for (const Checkpoint& checkpoint : run.checkpoints) {
    if (checkpoint.below_resolution) continue;
    points.push_back({.log_cuts = checkpoint.log_cuts,
                      .log_bluntness = checkpoint.log_bluntness,
                      .weight = 1 / rough_variance(checkpoint)});
  }
  return points;
}

struct ArmRuns {
  std::vector<std::size_t> runs;
  std::vector<std::vector<RunPoint>> points;
};

std::vector<RunFit> fits_at(const ArmRuns& arm, double log_shape, const PriorCentres& centres) {
  std::vector<RunFit> fits;
  for (const auto& points : arm.points) {
    fits.push_back(
        fit_run(points, {.fixed_shape = std::exp(log_shape), .pulled_towards = centres}));
  }
  return fits;
}

double misfit_of(const std::vector<RunFit>& fits, double log_shape, const PriorScales& priors) {
  // The prior of the shape, at a typical error of a log reading of 0.1.
  const double z = (log_shape - std::log(priors.shape_centre)) / priors.log_shape_sd;
  double misfit = 0.01 * z * z;
  for (const RunFit& fit : fits) misfit += fit.sum_of_squares;
  return misfit;
}

// Golden-section search between 0.2 and 2 (Kiefer 1953).
double best_log_shape(const ArmRuns& arm, const PriorCentres& centres, const PriorScales& priors) {
  constexpr double kGolden = 0.6180339887498949;
  constexpr int kSteps = 12;
  double low = std::log(0.2);
  double high = std::log(2.0);
  const auto misfit = [&](double x) { return misfit_of(fits_at(arm, x, centres), x, priors); };
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

// Information of one run's readings on (log b0, log tau, log p), at unit variance of a reading.
using Information = std::array<std::array<double, 3>, 3>;

Information information_of(const std::vector<RunPoint>& points, const LogLogistic& curve) {
  Information information{};
  for (const RunPoint& point : points) {
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
  double half_information = 0;   // log b0 left free
  double shape_information = 0;  // log b0 and log tau left free
};

RunAnchorWithShape anchor_of(const LogLogistic& curve, const Information& unit, double variance) {
  RunAnchorWithShape anchor;
  anchor.run.start.level = curve.log_start;
  anchor.run.half.level = curve.log_half_keenness;
  const double bb = unit[0][0] / variance;
  const double bt = unit[0][1] / variance;
  const double tt = unit[1][1] / variance;
  const double determinant = bb * tt - bt * bt;
  // A run whose edge never blunted says nothing of half keenness: then only its start is anchored.
  if (!(bb > 0) || !(tt > 1e-6) || !(determinant > 1e-9 * bb * tt)) {
    anchor.run.start.information = std::max(bb, 0.0);
    return anchor;
  }
  const double bp = unit[0][2] / variance;
  const double tp = unit[1][2] / variance;
  const double pp = unit[2][2] / variance;
  anchor.run.start.information = determinant / tt;
  anchor.run.half.information = tt;
  anchor.run.half_by_start = -bt / tt;
  anchor.run.start_by_shape = -(tt * bp - bt * tp) / determinant;
  anchor.run.half_by_shape = -(bb * tp - bt * bp) / determinant;
  anchor.half_information = determinant / bb;
  anchor.shape_information =
      std::max(0.0, pp + bp * anchor.run.start_by_shape + tp * anchor.run.half_by_shape);
  return anchor;
}

std::vector<ArmRuns> runs_by_arm(const BluntingData& data) {
  std::vector<ArmRuns> arms(data.arms.size());
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    ArmRuns& arm = arms[data.runs[r].arm];
    arm.runs.push_back(r);
    arm.points.push_back(points_of(data.runs[r]));
  }
  return arms;
}

constexpr double kLargestError = 4;  // variance of a run that says next to nothing

// Mean over the runs of an arm, of their levels and of their errors.
ArmAnchor arm_anchor(const std::vector<RunAnchorWithShape>& runs, double log_shape) {
  ArmAnchor arm;
  const double count = static_cast<double>(runs.size());
  arm.start.count = count;
  arm.half.count = count;
  arm.shape.level = log_shape;
  for (const RunAnchorWithShape& run : runs) {
    const auto error = [](double information) {
      return std::min(kLargestError, information > 0 ? 1 / information : kLargestError);
    };
    arm.start.level += run.run.start.level / count;
    arm.half.level += run.run.half.level / count;
    arm.start.error += error(run.run.start.information) / count;
    arm.half.error += error(run.half_information) / count;
    arm.start_by_shape += run.run.start_by_shape / count;
    arm.half_by_shape += run.run.half_by_shape / count;
    arm.shape.information += run.shape_information;
  }
  return arm;
}

// The pooled sd of the runs' levels about their arms, within bounds.
double scatter_about_arms(const BluntingData& data,
                          const Anchors& anchors,
                          Anchor RunAnchor::*level,
                          MeanAnchor ArmAnchor::*mean) {
  double squares = 0;
  for (std::size_t r = 0; r < data.runs.size(); ++r) {
    const double deviation =
        (anchors.runs[r].*level).level - (anchors.arms[data.runs[r].arm].*mean).level;
    squares += deviation * deviation;
  }
  const double freedom =
      static_cast<double>(data.runs.size()) - static_cast<double>(data.arms.size());
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

}  // namespace

Anchors anchors_for(const BluntingData& data,
                    const ModelSpec& spec,
                    const ParameterLayout& layout) {
  const PriorCentres centres = spec.centres.value_or(data.data_centres);
  const std::vector<ArmRuns> arms = runs_by_arm(data);
  std::vector<double> log_shapes;
  std::vector<std::vector<RunFit>> fits;
  double squares = 0;
  double freedom = 0;
  for (const ArmRuns& arm : arms) {
    log_shapes.push_back(best_log_shape(arm, centres, spec.priors));
    fits.push_back(fits_at(arm, log_shapes.back(), centres));
    for (std::size_t i = 0; i < arm.runs.size(); ++i) {
      squares += fits.back()[i].sum_of_squares;
      freedom += static_cast<double>(arm.points[i].size()) - 2;
    }
    freedom -= 1;
  }
  // One reading's variance; a hundredth of a percent at least, for readings without any scatter.
  const double variance = std::max(1e-4, squares / std::max(1.0, freedom));

  Anchors anchors;
  anchors.runs.resize(data.runs.size());
  for (std::size_t a = 0; a < arms.size(); ++a) {
    std::vector<RunAnchorWithShape> with_shape;
    for (std::size_t i = 0; i < arms[a].runs.size(); ++i) {
      const LogLogistic& curve = fits[a][i].curve;
      with_shape.push_back(anchor_of(curve, information_of(arms[a].points[i], curve), variance));
      anchors.runs[arms[a].runs[i]] = with_shape.back().run;
    }
    anchors.arms.push_back(arm_anchor(with_shape, log_shapes[a]));
  }
  anchors.shape_means = shape_means_of(data, anchors);
  const double repeat_sd =
      data.repeat_degrees_of_freedom > 0
          ? std::sqrt(data.repeat_sum_of_squares / data.repeat_degrees_of_freedom)
          : 0;
  anchors.scatters = {
      .start = std::clamp(
          scatter_about_arms(data, anchors, &RunAnchor::start, &ArmAnchor::start), 0.03, 0.4),
      .run = std::clamp(
          scatter_about_arms(data, anchors, &RunAnchor::half, &ArmAnchor::half), 0.08, 0.7),
      .reading = repeat_sd > 0 ? repeat_sd : std::sqrt(variance),
      .checkpoint = 0.2 * std::sqrt(variance)};
  anchors.blocks = group_anchors(data, anchors, layout.block_count, &RunData::block);
  anchors.specimens = group_anchors(data, anchors, layout.specimen_count, &RunData::specimen);
  return anchors;
}

}  // namespace keenfall::blunting
