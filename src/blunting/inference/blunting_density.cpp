#include "blunting/inference/blunting_density.h"

#include "base/require.h"
#include "blunting/inference/tail_probability.h"
#include "numerics/random.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace keenfall::blunting {

namespace {

constexpr double kSmallestShape = 0.2;
constexpr double kLargestShape = 2.0;
constexpr double kRobustScale = 0.831;  // see the header
// A zero says "below the resolution" only roughly: within a factor of two (common practice, no
// source).
constexpr double kZeroFuzz = 0.6931471805599453;
constexpr double kLargestLogRise = 600;  // exp of it is still finite

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

// The log of a product of many positive factors, with few logarithms.
class LogProduct {
 public:
  void multiply(double factor) {
    product_ *= factor;
    if (product_ < 1e-100 || product_ > 1e100) {
      log_ += std::log(product_);
      product_ = 1;
    }
  }
  [[nodiscard]] double log() const { return log_ + std::log(product_); }

 private:
  double product_ = 1;
  double log_ = 0;
};

// A residual's part of the log likelihood but for the factors collected in LogProducts.
struct ResidualTerm {
  double log_likelihood = 0;
  double by_mean = 0;
  double by_variance = 0;
};

ResidualTerm censored_term(double residual, double variance, double side, bool robust) {
  const double root = std::sqrt(variance);
  const double z = side * residual / root;
  const LogTail tail = robust ? student4_log_tail(z) : normal_log_tail(z);
  return {.log_likelihood = tail.log_probability,
          .by_mean = -side * tail.derivative / root,
          .by_variance = -0.5 * tail.derivative * z / variance};
}

}  // namespace

struct BluntingDensity::Slopes {
  std::vector<double> start_mean;
  std::vector<double> half_mean;
  std::vector<double> log_shape;
  std::vector<double> run_start;
  std::vector<double> run_half;
  std::vector<double> block_effect;
  std::vector<double> specimen_effect;
  std::vector<double> log_run_scatter;
  double log_start_scatter = 0;
  double log_reading_scatter = 0;
  double log_checkpoint_scatter = 0;
  double log_shape_scatter = 0;
  double log_block_scatter = 0;
  double log_specimen_scatter = 0;

  explicit Slopes(const ParameterLayout& layout)
      : start_mean(layout.arms),
        half_mean(layout.arms),
        log_shape(layout.arms),
        run_start(layout.runs),
        run_half(layout.runs),
        block_effect(layout.block_count),
        specimen_effect(layout.specimen_count),
        log_run_scatter(layout.scatters) {}
};

BluntingDensity::BluntingDensity(const BluntingData& data, const ModelSpec& spec)
    : data_(data),
      spec_(spec),
      parts_(parts_for(spec, data)),
      layout_(layout_of(parts_, data)),
      anchors_(anchors_for(data, spec, layout_)),
      centres_(spec.centres.value_or(data.data_centres)) {}

std::size_t BluntingDensity::scatter_of(std::size_t medium) const {
  return layout_.scatters > 1 ? medium : 0;
}

double BluntingDensity::run_centre(const RunData& run, const ParameterValues& values) const {
  double centre = values.half_mean[run.arm];
  if (layout_.block_count > 0 && run.block) centre += values.block_effect[*run.block];
  if (layout_.specimen_count > 0 && run.specimen) centre += values.specimen_effect[*run.specimen];
  return centre;
}

// From the top of the model down: every level may shift with those before it.
void BluntingDensity::unpack(std::span<const double> q, ParameterValues& v, Levels& levels) const {
  unpack_scales(q, v);
  unpack_shapes(q, v, levels);
  unpack_means(q, v, levels);
  unpack_groups(q, v, levels);
  unpack_runs(q, v, levels);
}

void BluntingDensity::unpack_scales(std::span<const double> q, ParameterValues& v) const {
  const ParameterLayout& at = layout_;
  v.start_scatter = std::exp(q[at.log_start_scatter]);
  v.reading_scatter = std::exp(q[at.log_reading_scatter]);
  v.checkpoint_scatter = at.has_checkpoint_scatter ? std::exp(q[at.log_checkpoint_scatter]) : 0;
  v.shape_scatter = at.has_shape_level ? std::exp(q[at.log_shape_scatter]) : 0;
  v.block_scatter = at.block_count > 0 ? std::exp(q[at.log_block_scatter]) : 0;
  v.specimen_scatter = at.specimen_count > 0 ? std::exp(q[at.log_specimen_scatter]) : 0;
  v.run_scatter.resize(at.scatters);
  for (std::size_t s = 0; s < at.scatters; ++s) {
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
    levels.shape_mean[m] = anchored_mean(
        q[at.shape_mean + m], spec_.priors.log_shape_sd, v.shape_scatter, anchors_.shape_means[m]);
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
    levels.shape[a] = anchored_level(z, centre, v.shape_scatter, anchors_.arms[a].shape);
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
    MeanAnchor half = arm.half;
    half.level += arm.half_by_shape * shift;
    levels.start_mean[a] =
        anchored_mean(q[at.start_mean + a], spec_.priors.log_start_sd, v.start_scatter, start);
    levels.half_mean[a] = anchored_mean(q[at.half_mean + a],
                                        spec_.priors.log_half_keenness_sd,
                                        v.run_scatter[scatter_of(data_.medium_of_arm[a])],
                                        half);
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
  for (std::size_t r = 0; r < at.runs; ++r) {
    const RunData& run = data_.runs[r];
    const RunAnchor& anchor = anchors_.runs[r];
    const double shift = std::log(v.shape[run.arm]) - anchors_.arms[run.arm].shape.level;
    Anchor start = anchor.start;
    start.level += anchor.start_by_shape * shift;
    levels.run_start[r] =
        anchored_level(q[at.run_start + r], v.start_mean[run.arm], v.start_scatter, start);
    v.run_start[r] = levels.run_start[r].level;
    Anchor half = anchor.half;
    half.level +=
        anchor.half_by_shape * shift + anchor.half_by_start * (v.run_start[r] - anchor.at_start);
    levels.run_half[r] = anchored_level(
        q[at.run_half + r], run_centre(run, v), v.run_scatter[scatter_of(run.medium)], half);
    v.run_half[r] = levels.run_half[r].level;
  }
}

// The variance of a checkpoint's centre is factor (s_u^2 + w sigma^2), factor 1 or kRobustScale^2.
double BluntingDensity::add_run_readings(std::size_t r, Slopes& slopes) const {
  const RunData& run = data_.runs[r];
  const double shape = values_.shape[run.arm];
  const double factor = parts_.robust ? kRobustScale * kRobustScale : 1;
  const double spot = factor * values_.checkpoint_scatter * values_.checkpoint_scatter;
  const double one_reading = factor * values_.reading_scatter * values_.reading_scatter;
  const double side = data_.higher_is_keener() ? -1 : 1;
  double log_likelihood = 0;
  double by_start = 0;
  double by_half = 0;
  double by_shape = 0;
  double by_reading = 0;
  double by_spot = 0;
  LogProduct variances;
  LogProduct ratios;
  for (const Checkpoint& checkpoint : run.checkpoints) {
    double mean = values_.run_start[r];
    double share = 0;  // A / (1 + A), A = (x / tau)^p
    double log_time = 0;
    if (checkpoint.cuts > 0) {
      log_time = checkpoint.log_cuts - values_.run_half[r];
      const double power = std::exp(std::min(shape * log_time, kLargestLogRise));
      share = power / (1 + power);
      mean += std::log(1 + power);
    }
    const double repeat = checkpoint.relative_variance * one_reading;
    const double variance = spot + repeat;
    const double residual = checkpoint.log_bluntness - mean;
    ResidualTerm term;
    if (checkpoint.below_resolution) {
      term = censored_term(residual, variance + kZeroFuzz * kZeroFuzz, side, parts_.robust);
    } else if (parts_.robust) {
      const double precision = 1 / variance;
      const double square = residual * residual * precision;
      const double weight = 5 / (4 + square);
      variances.multiply(variance);
      ratios.multiply(1 + 0.25 * square);
      term = {.by_mean = weight * residual * precision,
              .by_variance = 0.5 * (weight * square - 1) * precision};
    } else {
      const double precision = 1 / variance;
      const double square = residual * residual * precision;
      variances.multiply(variance);
      term = {.log_likelihood = -0.5 * square,
              .by_mean = residual * precision,
              .by_variance = 0.5 * (square - 1) * precision};
    }
    log_likelihood += term.log_likelihood;
    by_start += term.by_mean;
    by_half -= term.by_mean * shape * share;
    by_shape += term.by_mean * share * log_time;
    by_reading += 2 * term.by_variance * repeat;
    by_spot += 2 * term.by_variance * spot;
  }
  slopes.run_start[r] = by_start;
  slopes.run_half[r] = by_half;
  slopes.log_shape[run.arm] += by_shape * shape;
  slopes.log_reading_scatter += by_reading;
  slopes.log_checkpoint_scatter += by_spot;
  return log_likelihood - 0.5 * variances.log() - 2.5 * ratios.log();
}

double BluntingDensity::add_readings(Slopes& slopes) const {
  double log_likelihood = 0;
  for (std::size_t r = 0; r < data_.runs.size(); ++r) log_likelihood += add_run_readings(r, slopes);
  // The repeats about their own centres.
  const double degrees = data_.repeat_degrees_of_freedom;
  const double squares =
      data_.repeat_sum_of_squares / (values_.reading_scatter * values_.reading_scatter);
  log_likelihood += -degrees * std::log(values_.reading_scatter) - 0.5 * squares;
  slopes.log_reading_scatter += squares - degrees;
  return log_likelihood;
}

// From the bottom of the model up: a level's slope is complete before it is passed on.
double BluntingDensity::add_runs(std::span<double> gradient, Slopes& slopes) const {
  const ParameterLayout& at = layout_;
  double log_prior = 0;
  for (std::size_t r = 0; r < at.runs; ++r) {
    const RunData& run = data_.runs[r];
    const RunAnchor& anchor = anchors_.runs[r];
    const AnchoredLevel& half = levels_.run_half[r];
    const double by_half = slopes.run_half[r];
    log_prior += half.log_prior();
    gradient[at.run_half + r] = half.by_z(by_half);
    const double by_centre = half.by_centre(by_half);
    slopes.half_mean[run.arm] += by_centre;
    if (at.block_count > 0 && run.block) slopes.block_effect[*run.block] += by_centre;
    if (at.specimen_count > 0 && run.specimen) slopes.specimen_effect[*run.specimen] += by_centre;
    slopes.log_run_scatter[scatter_of(run.medium)] += half.by_log_scatter(by_half);
    const double by_half_anchor = half.by_anchor(by_half);

    const AnchoredLevel& start = levels_.run_start[r];
    const double by_start = slopes.run_start[r] + by_half_anchor * anchor.half_by_start;
    log_prior += start.log_prior();
    gradient[at.run_start + r] = start.by_z(by_start);
    slopes.start_mean[run.arm] += start.by_centre(by_start);
    slopes.log_start_scatter += start.by_log_scatter(by_start);

    slopes.log_shape[run.arm] +=
        by_half_anchor * anchor.half_by_shape + start.by_anchor(by_start) * anchor.start_by_shape;
  }
  return log_prior;
}

double BluntingDensity::add_groups(std::span<double> gradient, Slopes& slopes) const {
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

double BluntingDensity::add_means(std::span<double> gradient, Slopes& slopes) const {
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
    return whole;  // by the anchor
  };
  for (std::size_t a = 0; a < layout_.arms; ++a) {
    const ArmAnchor& anchor = anchors_.arms[a];
    const AnchoredMean& start = levels_.start_mean[a];
    const AnchoredMean& half = levels_.half_mean[a];
    const double by_start =
        add(start,
            normal_prior(start.level, centres_.log_start, spec_.priors.log_start_sd),
            slopes.start_mean[a],
            gradient[layout_.start_mean + a],
            slopes.log_start_scatter);
    const double by_half =
        add(half,
            normal_prior(half.level, centres_.log_half_keenness, spec_.priors.log_half_keenness_sd),
            slopes.half_mean[a],
            gradient[layout_.half_mean + a],
            slopes.log_run_scatter[scatter_of(data_.medium_of_arm[a])]);
    slopes.log_shape[a] += by_start * anchor.start_by_shape + by_half * anchor.half_by_shape;
  }
  return log_prior;
}

double BluntingDensity::add_shapes(std::span<const double> q,
                                   std::span<double> gradient,
                                   Slopes& slopes) const {
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
  }
  return log_prior;
}

double BluntingDensity::add_scales(std::span<double> gradient, const Slopes& slopes) const {
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
  add(at.log_start_scatter,
      half_normal_prior(values_.start_scatter, priors.start_scatter),
      slopes.log_start_scatter);
  add(at.log_reading_scatter,
      half_normal_prior(values_.reading_scatter, priors.reading_scatter),
      slopes.log_reading_scatter);
  for (std::size_t s = 0; s < at.scatters; ++s) {
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
        log_normal(values_.specimen_scatter, priors.specimen_scatter),
        slopes.log_specimen_scatter);
  }
  return log_prior;
}

double BluntingDensity::operator()(std::span<const double> q, std::span<double> gradient) {
  base::require(q.size() == layout_.dimension && gradient.size() == layout_.dimension,
                "a point of the model's dimension");
  unpack(q, values_, levels_);
  Slopes slopes(layout_);
  double log_density = add_readings(slopes);
  log_density += add_runs(gradient, slopes);
  log_density += add_groups(gradient, slopes);
  log_density += add_means(gradient, slopes);
  log_density += add_shapes(q, gradient, slopes);
  log_density += add_scales(gradient, slopes);
  return log_density;
}

ParameterValues BluntingDensity::values_at(std::span<const double> q) const {
  ParameterValues values;
  Levels levels;
  unpack(q, values, levels);
  return values;
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
  q[at.log_start_scatter] = about(anchors_.scatters.start);
  q[at.log_reading_scatter] = about(anchors_.scatters.reading);
  for (std::size_t s = 0; s < at.scatters; ++s) {
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
