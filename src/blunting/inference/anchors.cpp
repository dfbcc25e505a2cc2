#include "blunting/inference/anchors.h"

#include "blunting/inference/arm_fits.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace keenfall::blunting {

namespace {

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

// How far the curve of a run departs from a level line, in squared standard errors of its readings.
double departure_of(const std::vector<RunPoint>& points,
                    const LogLogistic& curve,
                    double variance) {
  double weights = 0;
  double sum = 0;
  double squares = 0;
  for (const RunPoint& point : points) {
    const double level = log_bluntness(curve, point.log_cuts) - curve.log_start;
    weights += point.weight;
    sum += point.weight * level;
    squares += point.weight * level * level;
  }
  return weights > 0 ? (squares - sum * sum / weights) / variance : 0;
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

// Below it a run may as well never blunt: of its half keenness only a lower end is known, which no
// anchor describes (two standard errors).
constexpr double kTellsFromLevel = 4;
constexpr double kLargestError = 4;  // variance of a run that says next to nothing

// The half keenness of such a run is sampled about its centre.
void forget_half_keenness(RunAnchorWithShape& anchor) {
  anchor.run.half = {.level = anchor.curve.log_half_keenness};
  anchor.run.half_by_start = 0;
  anchor.run.half_by_shape = 0;
  anchor.half_information = 0;
}

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

}  // namespace

namespace {

double mean_relative_variance(const BluntingData& data) {
  double sum = 0;
  double count = 0;
  for (const RunData& run : data.runs) {
    for (const Checkpoint& checkpoint : run.checkpoints) {
      if (!checkpoint.below_resolution) sum += checkpoint.relative_variance, ++count;
    }
  }
  return count > 0 ? sum / count : 1;
}

}  // namespace

// A checkpoint's centre has variance s_u^2 + w s^2; anchors weigh it as (w + 0.1) times one number.
double ReadingPrecision::factor(double reading_scatter, double checkpoint_scatter) const {
  return reference_variance * (relative_variance + 0.1) /
         (checkpoint_scatter * checkpoint_scatter +
          relative_variance * reading_scatter * reading_scatter);
}

double ReadingPrecision::by_log_reading(double reading_scatter, double checkpoint_scatter) const {
  const double reading = relative_variance * reading_scatter * reading_scatter;
  return -2 * reading / (checkpoint_scatter * checkpoint_scatter + reading);
}

double ReadingPrecision::by_log_checkpoint(double reading_scatter,
                                           double checkpoint_scatter) const {
  return -2 - by_log_reading(reading_scatter, checkpoint_scatter);
}

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
  Anchors anchors{.precision = {.reference_variance = variance,
                                .relative_variance = mean_relative_variance(data)}};
  anchors.runs.resize(data.runs.size());
  for (std::size_t a = 0; a < arms.size(); ++a) {
    std::vector<RunAnchorWithShape> with_shape;
    for (std::size_t i = 0; i < arms[a].runs.size(); ++i) {
      const LogLogistic& curve = fits[a].runs[i].curve;
      with_shape.push_back(
          anchor_of(curve, information_of(arms[a].points[i], curve), fits[a].pull, variance));
      if (departure_of(arms[a].points[i], curve, variance) < kTellsFromLevel) {
        forget_half_keenness(with_shape.back());
      }
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
