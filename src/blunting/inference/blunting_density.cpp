#include "blunting/inference/blunting_density.h"

#include "base/require.h"
#include "blunting/inference/scattered.h"
#include "blunting/inference/tail_probability.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace keenfall::blunting {

namespace {

constexpr double kSmallestShape = 0.2;
constexpr double kLargestShape = 2.0;
constexpr double kRobustScale = 0.831;   // see the header
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
NormalPrior half_normal_prior(double s, double log_s, double prior_scale) {
  const double z = s / prior_scale;
  return {.log_density = -0.5 * z * z + log_s, .slope = 1 - z * z};
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
  std::vector<double> shape;  // by p
  std::vector<double> run_start;
  std::vector<double> run_half;
  std::vector<double> block_effect;
  std::vector<double> specimen_effect;
  std::vector<double> log_run_scatter;
  double log_start_scatter = 0;
  double log_reading_scatter = 0;
  double log_checkpoint_scatter = 0;
  double log_shape_scatter = 0;

  explicit Slopes(const ParameterLayout& layout)
      : start_mean(layout.arms),
        half_mean(layout.arms),
        shape(layout.arms),
        run_start(layout.runs),
        run_half(layout.runs),
        block_effect(layout.block_count),
        specimen_effect(layout.specimen_count),
        log_run_scatter(layout.scatters) {}
};

BluntingDensity::BluntingDensity(const BluntingData& data, const ModelSpec& spec, Centring centring)
    : data_(data),
      spec_(spec),
      parts_(parts_for(spec, data)),
      layout_(layout_of(parts_, data)),
      centring_(std::move(centring)),
      centres_(spec.centres.value_or(data.data_centres)) {
  base::require(centring_.run_start.size() == data.runs.size() &&
                    centring_.run_half.size() == data.runs.size() &&
                    centring_.shape.size() == data.arms.size(),
                "a centring for every run and every arm");
}

std::size_t BluntingDensity::scatter_of(const RunData& run) const {
  return layout_.scatters > 1 ? run.medium : 0;
}

double BluntingDensity::run_centre(const RunData& run, const ParameterValues& values) const {
  double centre = values.half_mean[run.arm];
  if (layout_.block_count > 0 && run.block) centre += values.block_effect[*run.block];
  if (layout_.specimen_count > 0 && run.specimen) centre += values.specimen_effect[*run.specimen];
  return centre;
}

void BluntingDensity::unpack(std::span<const double> q,
                             ParameterValues& v,
                             DensityLevels& levels) const {
  const ParameterLayout& at = layout_;
  const auto copy = [&q](std::size_t first, std::size_t count) {
    const auto begin = q.begin() + static_cast<std::ptrdiff_t>(first);
    return std::vector<double>(begin, begin + static_cast<std::ptrdiff_t>(count));
  };
  v.start_mean = copy(at.start_mean, at.arms);
  v.half_mean = copy(at.half_mean, at.arms);
  v.shape_mean = copy(at.shape_mean, at.has_shape_level ? at.media : 0);
  v.run_scatter = copy(at.log_run_scatter, at.scatters);
  for (double& scatter : v.run_scatter) scatter = std::exp(scatter);
  v.start_scatter = std::exp(q[at.log_start_scatter]);
  v.reading_scatter = std::exp(q[at.log_reading_scatter]);
  v.checkpoint_scatter = at.has_checkpoint_scatter ? std::exp(q[at.log_checkpoint_scatter]) : 0;
  v.shape_scatter = at.has_shape_level ? std::exp(q[at.log_shape_scatter]) : 0;
  v.block_scatter = at.block_count > 0 ? std::exp(q[at.log_block_scatter]) : 0;
  v.specimen_scatter = at.specimen_count > 0 ? std::exp(q[at.log_specimen_scatter]) : 0;
  const auto group = [this, &q](std::size_t first,
                                std::size_t count,
                                std::size_t log_scatter,
                                std::vector<Scattered>& effects,
                                std::vector<double>& values) {
    effects.resize(count);
    values.resize(count);
    for (std::size_t i = 0; i < count; ++i) {
      effects[i] = scattered(q[first + i], 0, q[log_scatter], centring_.group);
      values[i] = effects[i].level(0);
    }
  };
  group(at.block, at.block_count, at.log_block_scatter, levels.block, v.block_effect);
  group(
      at.specimen, at.specimen_count, at.log_specimen_scatter, levels.specimen, v.specimen_effect);
  unpack_shapes(q, v, levels);
  unpack_runs(q, v, levels);
}

void BluntingDensity::unpack_shapes(std::span<const double> q,
                                    ParameterValues& v,
                                    DensityLevels& levels) const {
  const ParameterLayout& at = layout_;
  v.shape.resize(at.arms);
  levels.shape.resize(at.has_shape_level ? at.arms : 0);
  for (std::size_t a = 0; a < at.arms; ++a) {
    const double z = q[at.shape + a];
    if (!at.has_shape_level) {
      v.shape[a] = kSmallestShape + (kLargestShape - kSmallestShape) / (1 + std::exp(-z));
      continue;
    }
    const double centre = v.shape_mean[data_.medium_of_arm[a]];
    levels.shape[a] = scattered(z, centre, q[at.log_shape_scatter], centring_.shape[a]);
    v.shape[a] = std::exp(levels.shape[a].level(centre));
  }
}

void BluntingDensity::unpack_runs(std::span<const double> q,
                                  ParameterValues& v,
                                  DensityLevels& levels) const {
  const ParameterLayout& at = layout_;
  v.run_start.resize(at.runs);
  v.run_half.resize(at.runs);
  levels.run_start.resize(at.runs);
  levels.run_half.resize(at.runs);
  for (std::size_t r = 0; r < at.runs; ++r) {
    const RunData& run = data_.runs[r];
    const double start_centre = v.start_mean[run.arm];
    levels.run_start[r] = scattered(
        q[at.run_start + r], start_centre, q[at.log_start_scatter], centring_.run_start[r]);
    v.run_start[r] = levels.run_start[r].level(start_centre);
    const double half_centre = run_centre(run, v);
    levels.run_half[r] = scattered(q[at.run_half + r],
                                   half_centre,
                                   q[at.log_run_scatter + scatter_of(run)],
                                   centring_.run_half[r]);
    v.run_half[r] = levels.run_half[r].level(half_centre);
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
      term = censored_term(residual, variance, side, parts_.robust);
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
  slopes.shape[run.arm] += by_shape;
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

double BluntingDensity::add_runs(std::span<double> gradient, Slopes& slopes) const {
  const ParameterLayout& at = layout_;
  double log_prior = 0;
  for (std::size_t r = 0; r < at.runs; ++r) {
    const RunData& run = data_.runs[r];
    const Scattered& start = levels_.run_start[r];
    log_prior += start.log_prior();
    gradient[at.run_start + r] = start.by_z(slopes.run_start[r]);
    slopes.start_mean[run.arm] += start.by_centre(slopes.run_start[r]);
    slopes.log_start_scatter += start.by_log_scatter(slopes.run_start[r]);

    const Scattered& half = levels_.run_half[r];
    log_prior += half.log_prior();
    gradient[at.run_half + r] = half.by_z(slopes.run_half[r]);
    const double by_centre = half.by_centre(slopes.run_half[r]);
    slopes.half_mean[run.arm] += by_centre;
    if (at.block_count > 0 && run.block) slopes.block_effect[*run.block] += by_centre;
    if (at.specimen_count > 0 && run.specimen) slopes.specimen_effect[*run.specimen] += by_centre;
    slopes.log_run_scatter[scatter_of(run)] += half.by_log_scatter(slopes.run_half[r]);
  }
  return log_prior;
}

double BluntingDensity::add_shapes(std::span<double> gradient, Slopes& slopes) const {
  const ParameterLayout& at = layout_;
  const double log_centre = std::log(spec_.priors.shape_centre);
  double log_prior = 0;
  for (std::size_t a = 0; a < at.arms; ++a) {
    const double p = values_.shape[a];
    if (at.has_shape_level) {
      const std::size_t medium = data_.medium_of_arm[a];
      const Scattered& shape = levels_.shape[a];
      const double by_log_shape = slopes.shape[a] * p;
      log_prior += shape.log_prior();
      gradient[at.shape + a] = shape.by_z(by_log_shape);
      gradient[at.shape_mean + medium] += shape.by_centre(by_log_shape);
      slopes.log_shape_scatter += shape.by_log_scatter(by_log_shape);
      continue;
    }
    const double above = p - kSmallestShape;
    const double below = kLargestShape - p;
    const double jacobian = above * below / (kLargestShape - kSmallestShape);
    const NormalPrior prior = normal_prior(std::log(p), log_centre, spec_.priors.log_shape_sd);
    log_prior += prior.log_density - std::log(p) + std::log(above) + std::log(below);
    gradient[at.shape + a] =
        jacobian * (slopes.shape[a] + (prior.slope - 1) / p + 1 / above - 1 / below);
  }
  for (std::size_t m = 0; at.has_shape_level && m < at.media; ++m) {
    const NormalPrior prior =
        normal_prior(values_.shape_mean[m], log_centre, spec_.priors.log_shape_sd);
    log_prior += prior.log_density;
    gradient[at.shape_mean + m] += prior.slope;
  }
  return log_prior;
}

double BluntingDensity::add_scales(std::span<double> gradient, const Slopes& slopes) const {
  const ParameterLayout& at = layout_;
  const PriorScales& priors = spec_.priors;
  double log_prior = 0;
  const auto add = [&](std::size_t index, double s, double prior_scale, double slope) {
    const NormalPrior prior = half_normal_prior(s, std::log(s), prior_scale);
    log_prior += prior.log_density;
    gradient[index] = slope + prior.slope;
  };
  add(at.log_start_scatter, values_.start_scatter, priors.start_scatter, slopes.log_start_scatter);
  add(at.log_reading_scatter,
      values_.reading_scatter,
      priors.reading_scatter,
      slopes.log_reading_scatter);
  for (std::size_t s = 0; s < at.scatters; ++s) {
    add(at.log_run_scatter + s,
        values_.run_scatter[s],
        priors.run_scatter,
        slopes.log_run_scatter[s]);
  }
  if (at.has_checkpoint_scatter) {
    add(at.log_checkpoint_scatter,
        values_.checkpoint_scatter,
        priors.checkpoint_scatter,
        slopes.log_checkpoint_scatter);
  }
  if (at.has_shape_level) {
    const NormalPrior prior = normal_prior(
        std::log(values_.shape_scatter), std::log(priors.shape_scatter), priors.log_scatter_sd);
    log_prior += prior.log_density;
    gradient[at.log_shape_scatter] = slopes.log_shape_scatter + prior.slope;
  }
  return log_prior;
}

double BluntingDensity::add_groups(std::span<double> gradient, const Slopes& slopes) const {
  const ParameterLayout& at = layout_;
  double log_prior = 0;
  const auto add = [&](std::size_t first,
                       std::size_t log_scatter,
                       double prior_median,
                       const std::vector<Scattered>& effects,
                       const std::vector<double>& by_effect) {
    if (effects.empty()) return;
    const NormalPrior prior =
        normal_prior(effects[0].log_scatter, std::log(prior_median), spec_.priors.log_scatter_sd);
    log_prior += prior.log_density;
    gradient[log_scatter] = prior.slope;
    for (std::size_t i = 0; i < effects.size(); ++i) {
      log_prior += effects[i].log_prior();
      gradient[first + i] = effects[i].by_z(by_effect[i]);
      gradient[log_scatter] += effects[i].by_log_scatter(by_effect[i]);
    }
  };
  const PriorScales& priors = spec_.priors;
  add(at.block, at.log_block_scatter, priors.block_scatter, levels_.block, slopes.block_effect);
  add(at.specimen,
      at.log_specimen_scatter,
      priors.specimen_scatter,
      levels_.specimen,
      slopes.specimen_effect);
  return log_prior;
}

double BluntingDensity::add_means(std::span<double> gradient, const Slopes& slopes) const {
  double log_prior = 0;
  for (std::size_t a = 0; a < layout_.arms; ++a) {
    const NormalPrior start =
        normal_prior(values_.start_mean[a], centres_.log_start, spec_.priors.log_start_sd);
    const NormalPrior half = normal_prior(
        values_.half_mean[a], centres_.log_half_keenness, spec_.priors.log_half_keenness_sd);
    log_prior += start.log_density + half.log_density;
    gradient[layout_.start_mean + a] = slopes.start_mean[a] + start.slope;
    gradient[layout_.half_mean + a] = slopes.half_mean[a] + half.slope;
  }
  return log_prior;
}

double BluntingDensity::operator()(std::span<const double> q, std::span<double> gradient) {
  base::require(q.size() == layout_.dimension && gradient.size() == layout_.dimension,
                "a point of the model's dimension");
  unpack(q, values_, levels_);
  std::ranges::fill(gradient, 0.0);
  Slopes slopes(layout_);
  double log_density = add_readings(slopes);
  log_density += add_runs(gradient, slopes);
  log_density += add_shapes(gradient, slopes);
  log_density += add_groups(gradient, slopes);
  log_density += add_scales(gradient, slopes);
  log_density += add_means(gradient, slopes);
  return log_density;
}

ParameterValues BluntingDensity::values_at(std::span<const double> q) const {
  DensityLevels levels;
  return values_at(q, levels);
}

ParameterValues BluntingDensity::values_at(std::span<const double> q, DensityLevels& levels) const {
  ParameterValues values;
  unpack(q, values, levels);
  return values;
}

}  // namespace keenfall::blunting
