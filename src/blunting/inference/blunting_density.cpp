#include "blunting/inference/blunting_density.h"

#include "base/require.h"
#include "blunting/inference/log_product.h"

#include <cmath>

namespace keenfall::blunting {

namespace {

// log density of a normal, up to a constant, and its slope.
struct NormalPrior {
  double log_density = 0;
  double slope = 0;
};

NormalPrior normal_prior(double value, double centre, double sd) {
  const double z = (value - centre) / sd;
  return {.log_density = -0.5 * z * z, .slope = -z / sd};
}

// Half-normal prior of a scale s, as a density of log s (Jacobian included), and its slope by log
// s.
NormalPrior half_normal_prior(double s, double prior_scale) {
  const double z = s / prior_scale;
  return {.log_density = -0.5 * z * z + std::log(s), .slope = 1 - z * z};
}

}  // namespace

BluntingDensity::BluntingDensity(const BluntingData& data, const ModelSpec& spec)
    : data_(data),
      spec_(spec),
      parts_(parts_for(spec, data)),
      layout_(layout_of(parts_, data)),
      anchors_(anchors_for(data, spec, layout_)),
      centres_(spec.centres.value_or(data.data_centres)),
      empty_slopes_(layout_),
      terms_(data),
      slopes_(layout_) {}

// From the bottom of the model up: a level's slope is complete before it is passed on.
double BluntingDensity::add_runs(std::span<double> gradient, DensitySlopes& slopes) const {
  const ParameterLayout& at = layout_;
  double log_prior = 0;
  LogProduct towards;
  for (std::size_t r = 0; r < at.runs; ++r) {
    const RunData& run = data_.runs[r];
    const RunAnchor& anchor = anchors_.runs[r];
    const AnchoredLevel& half = levels_.run_half[r];
    const double by_half = slopes.run_half[r];
    log_prior += half.log_normal();
    towards.multiply(half.towards);
    gradient[at.run_half + r] = half.by_z(by_half);
    const double by_centre = half.by_centre(by_half);
    slopes.half_mean[run.arm] += by_centre;
    if (at.block_count > 0 && run.block) slopes.block_effect[*run.block] += by_centre;
    if (at.specimen_count > 0 && run.specimen) slopes.specimen_effect[*run.specimen] += by_centre;
    const double start_over_mean = values_.run_start[r] - values_.start_mean[run.arm];
    slopes.start_effect += by_centre * start_over_mean;
    slopes.order_drift += by_centre * run.order_place;
    slopes.start_mean[run.arm] -= by_centre * values_.start_effect;
    const std::size_t scatter = scatter_of(run.medium);
    slopes.log_run_scatter[scatter] += half.by_log_scatter(by_half);
    slopes.log_information += half.by_log_information(by_half);
    const double by_half_anchor = half.by_anchor(by_half);

    const AnchoredLevel& start = levels_.run_start[r];
    const double by_start = slopes.run_start[r] + by_half_anchor * anchor.half_by_start +
                            by_centre * values_.start_effect;
    log_prior += start.log_normal();
    towards.multiply(start.towards);
    gradient[at.run_start + r] = start.by_z(by_start);
    slopes.start_mean[run.arm] += start.by_centre(by_start);
    slopes.log_start_scatter[scatter] += start.by_log_scatter(by_start);
    slopes.log_information += start.by_log_information(by_start);

    slopes.log_shape[run.arm] +=
        by_half_anchor * anchor.half_by_shape + start.by_anchor(by_start) * anchor.start_by_shape;
  }
  return log_prior + 0.5 * towards.log();
}

double BluntingDensity::add_groups(std::span<double> gradient, DensitySlopes& slopes) const {
  double log_prior = 0;
  const auto add = [&](std::size_t first,
                       const std::vector<AnchoredLevel>& effects,
                       const std::vector<double>& by_effect,
                       double& by_log_scatter) {
    for (std::size_t i = 0; i < effects.size(); ++i) {
      log_prior += effects[i].log_prior();
      gradient[first + i] = effects[i].by_z(by_effect[i]);
      by_log_scatter += effects[i].by_log_scatter(by_effect[i]);
    }
  };
  add(layout_.block, levels_.block, slopes.block_effect, slopes.log_block_scatter);
  add(layout_.specimen, levels_.specimen, slopes.specimen_effect, slopes.log_specimen_scatter);
  return log_prior;
}

double BluntingDensity::add_means(std::span<double> gradient, DensitySlopes& slopes) const {
  double log_prior = 0;
  const auto add = [&](const AnchoredMean& mean,
                       const NormalPrior& prior,
                       double slope,
                       double& by_z,
                       double& by_log_scatter) {
    const double whole = slope + prior.slope;
    log_prior += prior.log_density + std::log(mean.spread);
    by_z = mean.by_z(whole);
    by_log_scatter += mean.by_log_scatter(whole);
    slopes.log_information += mean.by_log_information(whole);
    return whole;  // by the anchor
  };
  for (std::size_t a = 0; a < layout_.arms; ++a) {
    const ArmAnchor& anchor = anchors_.arms[a];
    const std::size_t scatter = scatter_of(data_.medium_of_arm[a]);
    const AnchoredMean& start = levels_.start_mean[a];
    const AnchoredMean& half = levels_.half_mean[a];
    const double by_start =
        add(start,
            normal_prior(start.level, centres_.log_start, spec_.priors.log_start_sd),
            slopes.start_mean[a],
            gradient[layout_.start_mean + a],
            slopes.log_start_scatter[scatter]);
    const double by_half =
        add(half,
            normal_prior(half.level, centres_.log_half_keenness, spec_.priors.log_half_keenness_sd),
            slopes.half_mean[a],
            gradient[layout_.half_mean + a],
            slopes.log_run_scatter[scatter]);
    slopes.log_shape[a] += by_start * anchor.start_by_shape + by_half * anchor.half_by_shape;
  }
  return log_prior;
}

double BluntingDensity::add_shapes(std::span<const double> q,
                                   std::span<double> gradient,
                                   DensitySlopes& slopes) const {
  const ParameterLayout& at = layout_;
  const double log_centre = std::log(spec_.priors.shape_centre);
  double log_prior = 0;
  std::vector<double> by_mean(levels_.shape_mean.size());
  for (std::size_t a = 0; a < at.arms; ++a) {
    if (at.has_shape_level) {
      const AnchoredLevel& shape = levels_.shape[a];
      log_prior += shape.log_prior();
      gradient[at.shape + a] = shape.by_z(slopes.log_shape[a]);
      by_mean[data_.medium_of_arm[a]] += shape.by_centre(slopes.log_shape[a]);
      slopes.log_shape_scatter += shape.by_log_scatter(slopes.log_shape[a]);
      slopes.log_shape_information += shape.by_log_information(slopes.log_shape[a]);
      continue;
    }
    const double p = values_.shape[a];
    const double above = p - kSmallestShape;
    const double below = kLargestShape - p;
    const double jacobian = above * below / (kLargestShape - kSmallestShape);
    const NormalPrior prior = normal_prior(std::log(p), log_centre, spec_.priors.log_shape_sd);
    // Of log(jacobian), computed so that far coordinates do not underflow.
    log_prior += prior.log_density - std::log(p) - std::abs(q[at.shape + a]) -
                 2 * std::log1p(std::exp(-std::abs(q[at.shape + a])));
    gradient[at.shape + a] =
        jacobian * (slopes.log_shape[a] + prior.slope - 1) / p + (below - above) / (above + below);
  }
  for (std::size_t m = 0; m < by_mean.size(); ++m) {
    const AnchoredMean& mean = levels_.shape_mean[m];
    const NormalPrior prior = normal_prior(mean.level, log_centre, spec_.priors.log_shape_sd);
    const double whole = by_mean[m] + prior.slope;
    log_prior += prior.log_density + std::log(mean.spread);
    gradient[at.shape_mean + m] = mean.by_z(whole);
    slopes.log_shape_scatter += mean.by_log_scatter(whole);
    slopes.log_shape_information += mean.by_log_information(whole);
  }
  return log_prior;
}

double BluntingDensity::add_scales(std::span<double> gradient, const DensitySlopes& slopes) const {
  const ParameterLayout& at = layout_;
  const PriorScales& priors = spec_.priors;
  double log_prior = 0;
  const auto add = [&](std::size_t index, const NormalPrior& prior, double slope) {
    log_prior += prior.log_density;
    gradient[index] = slope + prior.slope;
  };
  const auto log_normal = [&priors](double scatter, double median) {
    return normal_prior(std::log(scatter), std::log(median), priors.log_scatter_sd);
  };
  add(at.log_reading_scatter,
      half_normal_prior(values_.reading_scatter, priors.reading_scatter),
      slopes.log_reading_scatter);
  for (std::size_t s = 0; s < at.scatters; ++s) {
    add(at.log_start_scatter + s,
        half_normal_prior(values_.start_scatter[s], priors.start_scatter),
        slopes.log_start_scatter[s]);
    add(at.log_run_scatter + s,
        half_normal_prior(values_.run_scatter[s], priors.run_scatter),
        slopes.log_run_scatter[s]);
  }
  if (at.has_checkpoint_scatter) {
    add(at.log_checkpoint_scatter,
        log_normal(values_.checkpoint_scatter, priors.checkpoint_scatter),
        slopes.log_checkpoint_scatter);
  }
  if (at.has_shape_level) {
    add(at.log_shape_scatter,
        log_normal(values_.shape_scatter, priors.shape_scatter),
        slopes.log_shape_scatter);
  }
  if (at.block_count > 0) {
    add(at.log_block_scatter,
        log_normal(values_.block_scatter, priors.block_scatter),
        slopes.log_block_scatter);
  }
  if (at.specimen_count > 0) {
    add(at.log_specimen_scatter,
        half_normal_prior(values_.specimen_scatter, priors.specimen_scatter),
        slopes.log_specimen_scatter);
  }
  return log_prior;
}

// Coefficients of covariates are sampled in units of their priors' sds.
double BluntingDensity::add_covariates(std::span<const double> q,
                                       std::span<double> gradient,
                                       const DensitySlopes& slopes) const {
  double log_prior = 0;
  const auto add = [&](bool has, std::size_t index, double prior_sd, double slope) {
    if (!has) return;
    const NormalPrior prior = normal_prior(q[index], 0, 1);
    log_prior += prior.log_density;
    gradient[index] = slope * prior_sd + prior.slope;
  };
  add(layout_.has_start_effect,
      layout_.start_effect,
      spec_.priors.start_effect,
      slopes.start_effect);
  add(layout_.has_order_drift, layout_.order_drift, spec_.priors.order_drift, slopes.order_drift);
  return log_prior;
}

double BluntingDensity::operator()(std::span<const double> q, std::span<double> gradient) {
  base::require(q.size() == layout_.dimension && gradient.size() == layout_.dimension,
                "a point of the model's dimension");
  unpack(q, values_, levels_);
  slopes_ = empty_slopes_;
  DensitySlopes& slopes = slopes_;
  double log_density = add_readings(slopes);
  log_density += add_runs(gradient, slopes);
  log_density += add_groups(gradient, slopes);
  log_density += add_means(gradient, slopes);
  log_density += add_shapes(q, gradient, slopes);
  slopes.log_information +=
      slopes.log_shape_information * log_shape_factor_by_log(levels_.information_factor);
  const ReadingPrecision& precision = anchors_.precision;
  slopes.log_reading_scatter +=
      slopes.log_information *
      precision.by_log_reading(values_.reading_scatter, values_.checkpoint_scatter);
  slopes.log_checkpoint_scatter +=
      slopes.log_information *
      precision.by_log_checkpoint(values_.reading_scatter, values_.checkpoint_scatter);
  log_density += add_scales(gradient, slopes);
  log_density += add_covariates(q, gradient, slopes);
  return log_density;
}

}  // namespace keenfall::blunting
