// BluntingDensity: from the sampler's coordinates to the parameters in their own terms.
#include "blunting/inference/blunting_density.h"

#include "numerics/random.h"

#include <algorithm>
#include <cmath>

namespace keenfall::blunting {

std::size_t BluntingDensity::scatter_of(std::size_t medium) const {
  return layout_.scatters > 1 ? medium : 0;
}

// The run's start must be known.
double BluntingDensity::run_centre(std::size_t r, const ParameterValues& values) const {
  const RunData& run = data_.runs[r];
  double centre = values.half_mean[run.arm];
  if (layout_.block_count > 0 && run.block) centre += values.block_effect[*run.block];
  if (layout_.specimen_count > 0 && run.specimen) centre += values.specimen_effect[*run.specimen];
  centre += values.start_effect * (values.run_start[r] - values.start_mean[run.arm]);
  return centre + values.order_drift * run.order_place;
}

// From the top of the model down: every level may shift with those before it.
void BluntingDensity::unpack(std::span<const double> q, ParameterValues& v, Levels& levels) const {
  unpack_scales(q, v);
  levels.information_factor = anchors_.precision.factor(v.reading_scatter, v.checkpoint_scatter);
  unpack_shapes(q, v, levels);
  unpack_means(q, v, levels);
  unpack_groups(q, v, levels);
  unpack_runs(q, v, levels);
}

void BluntingDensity::unpack_scales(std::span<const double> q, ParameterValues& v) const {
  const ParameterLayout& at = layout_;
  v.reading_scatter = std::exp(q[at.log_reading_scatter]);
  v.checkpoint_scatter = at.has_checkpoint_scatter ? std::exp(q[at.log_checkpoint_scatter]) : 0;
  v.shape_scatter = at.has_shape_level ? std::exp(q[at.log_shape_scatter]) : 0;
  v.block_scatter = at.block_count > 0 ? std::exp(q[at.log_block_scatter]) : 0;
  v.specimen_scatter = at.specimen_count > 0 ? std::exp(q[at.log_specimen_scatter]) : 0;
  v.start_effect = at.has_start_effect ? spec_.priors.start_effect * q[at.start_effect] : 0;
  v.order_drift = at.has_order_drift ? spec_.priors.order_drift * q[at.order_drift] : 0;
  v.start_scatter.resize(at.scatters);
  v.run_scatter.resize(at.scatters);
  for (std::size_t s = 0; s < at.scatters; ++s) {
    v.start_scatter[s] = std::exp(q[at.log_start_scatter + s]);
    v.run_scatter[s] = std::exp(q[at.log_run_scatter + s]);
  }
}

void BluntingDensity::unpack_shapes(std::span<const double> q,
                                    ParameterValues& v,
                                    Levels& levels) const {
  const ParameterLayout& at = layout_;
  const std::size_t media = at.has_shape_level ? at.media : 0;
  levels.shape_mean.resize(media);
  v.shape_mean.resize(media);
  for (std::size_t m = 0; m < media; ++m) {
    MeanAnchor mean = anchors_.shape_means[m];
    mean.error /= shape_factor(levels.information_factor);
    levels.shape_mean[m] =
        anchored_mean(q[at.shape_mean + m], spec_.priors.log_shape_sd, v.shape_scatter, mean);
    v.shape_mean[m] = levels.shape_mean[m].level;
  }
  v.shape.resize(at.arms);
  levels.shape.resize(at.has_shape_level ? at.arms : 0);
  for (std::size_t a = 0; a < at.arms; ++a) {
    const double z = q[at.shape + a];
    if (!at.has_shape_level) {
      v.shape[a] = kSmallestShape + (kLargestShape - kSmallestShape) / (1 + std::exp(-z));
      continue;
    }
    const double centre = v.shape_mean[data_.medium_of_arm[a]];
    Anchor shape = anchors_.arms[a].shape;
    shape.information *= shape_factor(levels.information_factor);
    levels.shape[a] = anchored_level(z, centre, v.shape_scatter, shape);
    v.shape[a] = std::exp(levels.shape[a].level);
  }
}

void BluntingDensity::unpack_means(std::span<const double> q,
                                   ParameterValues& v,
                                   Levels& levels) const {
  const ParameterLayout& at = layout_;
  levels.start_mean.resize(at.arms);
  levels.half_mean.resize(at.arms);
  v.start_mean.resize(at.arms);
  v.half_mean.resize(at.arms);
  for (std::size_t a = 0; a < at.arms; ++a) {
    const ArmAnchor& arm = anchors_.arms[a];
    const double shift = std::log(v.shape[a]) - arm.shape.level;
    MeanAnchor start = arm.start;
    start.level += arm.start_by_shape * shift;
    start.error /= levels.information_factor;
    MeanAnchor half = arm.half;
    half.level += arm.half_by_shape * shift;
    half.error /= levels.information_factor;
    const std::size_t scatter = scatter_of(data_.medium_of_arm[a]);
    levels.start_mean[a] = anchored_mean(
        q[at.start_mean + a], spec_.priors.log_start_sd, v.start_scatter[scatter], start);
    levels.half_mean[a] = anchored_mean(
        q[at.half_mean + a], spec_.priors.log_half_keenness_sd, v.run_scatter[scatter], half);
    v.start_mean[a] = levels.start_mean[a].level;
    v.half_mean[a] = levels.half_mean[a].level;
  }
}

void BluntingDensity::unpack_groups(std::span<const double> q,
                                    ParameterValues& v,
                                    Levels& levels) const {
  const auto group = [&q](std::size_t first,
                          double scatter,
                          const std::vector<Anchor>& anchors,
                          std::vector<AnchoredLevel>& effects,
                          std::vector<double>& values) {
    effects.resize(anchors.size());
    values.resize(anchors.size());
    for (std::size_t i = 0; i < anchors.size(); ++i) {
      effects[i] = anchored_level(q[first + i], 0, scatter, anchors[i]);
      values[i] = effects[i].level;
    }
  };
  group(layout_.block, v.block_scatter, anchors_.blocks, levels.block, v.block_effect);
  group(
      layout_.specimen, v.specimen_scatter, anchors_.specimens, levels.specimen, v.specimen_effect);
}

void BluntingDensity::unpack_runs(std::span<const double> q,
                                  ParameterValues& v,
                                  Levels& levels) const {
  const ParameterLayout& at = layout_;
  v.run_start.resize(at.runs);
  v.run_half.resize(at.runs);
  levels.run_start.resize(at.runs);
  levels.run_half.resize(at.runs);
  std::vector<double> shape_shift(at.arms);
  for (std::size_t a = 0; a < at.arms; ++a) {
    shape_shift[a] = std::log(v.shape[a]) - anchors_.arms[a].shape.level;
  }
  for (std::size_t r = 0; r < at.runs; ++r) {
    const RunData& run = data_.runs[r];
    const RunAnchor& anchor = anchors_.runs[r];
    const double shift = shape_shift[run.arm];
    Anchor start = anchor.start;
    start.level += anchor.start_by_shape * shift;
    start.information *= levels.information_factor;
    const std::size_t scatter = scatter_of(run.medium);
    levels.run_start[r] =
        anchored_level(q[at.run_start + r], v.start_mean[run.arm], v.start_scatter[scatter], start);
    v.run_start[r] = levels.run_start[r].level;
    Anchor half = anchor.half;
    half.information *= levels.information_factor;
    half.level +=
        anchor.half_by_shape * shift + anchor.half_by_start * (v.run_start[r] - anchor.at_start);
    levels.run_half[r] =
        anchored_level(q[at.run_half + r], run_centre(r, v), v.run_scatter[scatter], half);
    v.run_half[r] = levels.run_half[r].level;
  }
}

ParameterValues BluntingDensity::values_at(std::span<const double> q) const {
  ParameterValues values;
  Levels levels;
  unpack(q, values, levels);
  return values;
}

std::vector<double> BluntingDensity::rough_variances() const {
  const ParameterLayout& at = layout_;
  // The log of a scale known from so many degrees of freedom, and from its prior.
  const auto log_scale = [](double freedom, double prior_sd) {
    return 1 / (2 * std::max(0.0, freedom) + 1 / (prior_sd * prior_sd));
  };
  constexpr double kHalfNormalSd = 0.7;  // of the log of a half-normal scale, about
  double checkpoints = 0;
  std::vector<double> spare_runs(at.scatters);
  for (const RunData& run : data_.runs) {
    checkpoints += static_cast<double>(run.checkpoints.size());
    ++spare_runs[scatter_of(run.medium)];
  }
  for (const std::size_t medium : data_.medium_of_arm) --spare_runs[scatter_of(medium)];
  const double runs = static_cast<double>(at.runs);
  const double spare_readings = std::max(1.0, checkpoints - 2 * runs);
  std::vector<double> variances(at.dimension, 1.0);
  const auto log_normal_sd = spec_.priors.log_scatter_sd;
  for (std::size_t s = 0; s < at.scatters; ++s) {
    variances[at.log_start_scatter + s] = log_scale(spare_runs[s], kHalfNormalSd);
    variances[at.log_run_scatter + s] = log_scale(spare_runs[s], kHalfNormalSd);
  }
  if (at.has_checkpoint_scatter) {
    variances[at.log_reading_scatter] = log_scale(data_.repeat_degrees_of_freedom, kHalfNormalSd);
    variances[at.log_checkpoint_scatter] = log_scale(0.1 * spare_readings, log_normal_sd);
  } else {
    variances[at.log_reading_scatter] =
        log_scale(data_.repeat_degrees_of_freedom + spare_readings, kHalfNormalSd);
  }
  const auto group = [&](bool has, std::size_t index, std::size_t count) {
    if (has) variances[index] = log_scale(0.5 * static_cast<double>(count), log_normal_sd);
  };
  group(at.has_shape_level, at.log_shape_scatter, at.arms);
  group(at.block_count > 0, at.log_block_scatter, at.block_count);
  group(at.specimen_count > 0, at.log_specimen_scatter, at.specimen_count);
  const double each = anchors_.scatters.run * anchors_.scatters.run;
  const auto covariate = [&](bool has, std::size_t index, double prior_sd, double spread) {
    if (has) variances[index] = 1 / (1 + runs * spread * spread * prior_sd * prior_sd / each);
  };
  covariate(
      at.has_start_effect, at.start_effect, spec_.priors.start_effect, anchors_.scatters.start);
  constexpr double kSpreadOfPlaces = 0.29;  // sd of evenly spread places in -0.5..0.5
  covariate(at.has_order_drift, at.order_drift, spec_.priors.order_drift, kSpreadOfPlaces);
  return variances;
}

std::vector<double> BluntingDensity::start_for(base::Seed seed, std::uint64_t chain) const {
  constexpr std::uint64_t kStartStream = 1000;  // apart from the chains' own streams
  numerics::RandomStream random(seed, kStartStream + chain);
  const auto about = [&random](double scatter) {
    return std::log(scatter) + 0.4 * (2 * random.uniform() - 1);
  };
  const ParameterLayout& at = layout_;
  std::vector<double> q(at.dimension);
  for (double& coordinate : q) coordinate = 0.7 * random.normal();
  q[at.log_reading_scatter] = about(anchors_.scatters.reading);
  for (std::size_t s = 0; s < at.scatters; ++s) {
    q[at.log_start_scatter + s] = about(anchors_.scatters.start);
    q[at.log_run_scatter + s] = about(anchors_.scatters.run);
  }
  if (at.has_checkpoint_scatter) q[at.log_checkpoint_scatter] = about(anchors_.scatters.checkpoint);
  if (at.has_shape_level) q[at.log_shape_scatter] = about(spec_.priors.shape_scatter);
  if (at.block_count > 0) q[at.log_block_scatter] = about(spec_.priors.block_scatter);
  if (at.specimen_count > 0) q[at.log_specimen_scatter] = about(spec_.priors.specimen_scatter);
  for (std::size_t a = 0; !at.has_shape_level && a < at.arms; ++a) {
    const double p = std::clamp(std::exp(anchors_.arms[a].shape.level), 0.25, 1.9);
    q[at.shape + a] = std::log((p - kSmallestShape) / (kLargestShape - p)) + 0.1 * random.normal();
  }
  return q;
}

}  // namespace keenfall::blunting
