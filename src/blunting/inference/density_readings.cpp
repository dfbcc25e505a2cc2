// BluntingDensity: the likelihood of the readings.
#include "blunting/inference/blunting_density.h"
#include "blunting/inference/robust_errors.h"
#include "blunting/inference/tail_probability.h"

#include <algorithm>
#include <cmath>

namespace keenfall::blunting {

namespace {

// A zero says "below the resolution" only roughly: within a factor of two (common practice, no
// source).
constexpr double kZeroFuzz = 0.6931471805599453;

struct CensoredTerm {
  double log_likelihood = 0;
  double by_mean = 0;
  double by_variance = 0;
};

CensoredTerm censored_term(double residual, double variance, double side, bool robust) {
  const double root = std::sqrt(variance);
  const double z = side * residual / root;
  const LogTail tail = robust ? student4_log_tail(z) : normal_log_tail(z);
  return {.log_likelihood = tail.log_probability,
          .by_mean = -side * tail.derivative / root,
          .by_variance = -0.5 * tail.derivative * z / variance};
}

}  // namespace

// The variance of a checkpoint's centre is factor (s_u^2 + w sigma^2), factor 1 or kRobustScale^2.
void BluntingDensity::weigh_checkpoints() {
  const double factor = parts_.robust ? kRobustVariance : 1;
  const double one_reading = factor * values_.reading_scatter * values_.reading_scatter;
  spot_variance_ = factor * values_.checkpoint_scatter * values_.checkpoint_scatter;
  for (std::size_t w = 0; w < weighed_.size(); ++w) {
    const double repeat = weights_.relative_variance[w] * one_reading;
    const double variance = spot_variance_ + repeat;
    weighed_[w] = {.repeat_variance = repeat, .variance = variance, .precision = 1 / variance};
  }
}

void BluntingDensity::place_curves() {
  for (std::size_t r = 0; r < data_.runs.size(); ++r) {
    const double shape = values_.shape[data_.runs[r].arm];
    for (std::size_t i = weights_.first_of_run[r]; i < weights_.first_of_run[r + 1]; ++i) {
      terms_.log_start[i] = values_.run_start[r];
      terms_.log_half_keenness[i] = values_.run_half[r];
      terms_.shape[i] = shape;
      terms_.precision[i] = weighed_[weights_.class_of[i]].precision;
    }
  }
  for (const std::size_t i : weights_.censored) terms_.precision[i] = 0;
}

// Those below the resolution, which the terms left out.
double BluntingDensity::add_censored(DensitySlopes& slopes) {
  const double side = data_.higher_is_keener() ? -1 : 1;
  double log_likelihood = 0;
  for (const std::size_t i : weights_.censored) {
    const Weighed& weighed = weighed_[weights_.class_of[i]];
    const CensoredTerm term = censored_term(terms_.log_bluntness[i] - terms_.mean[i],
                                            weighed.variance + kZeroFuzz * kZeroFuzz,
                                            side,
                                            parts_.robust);
    log_likelihood += term.log_likelihood;
    slopes.log_reading_scatter += 2 * term.by_variance * weighed.repeat_variance;
    slopes.log_checkpoint_scatter += 2 * term.by_variance * spot_variance_;
    const double log_time = terms_.log_cuts[i] - terms_.log_half_keenness[i];
    const double share = -std::expm1(terms_.log_start[i] - terms_.mean[i]);
    terms_.by_mean[i] = term.by_mean;
    terms_.by_log_power[i] = term.by_mean * share;
    terms_.by_shape[i] = terms_.by_log_power[i] * log_time;
  }
  return log_likelihood;
}

void BluntingDensity::add_run_slopes(DensitySlopes& slopes) {
  for (std::size_t r = 0; r < data_.runs.size(); ++r) {
    double by_start = 0;
    double by_log_power = 0;
    double by_shape = 0;
    for (std::size_t i = weights_.first_of_run[r]; i < weights_.first_of_run[r + 1]; ++i) {
      by_start += terms_.by_mean[i];
      by_log_power += terms_.by_log_power[i];
      by_shape += terms_.by_shape[i];
    }
    const std::size_t arm = data_.runs[r].arm;
    slopes.run_start[r] = by_start;
    slopes.run_half[r] = -by_log_power * values_.shape[arm];
    slopes.log_shape[arm] += by_shape * values_.shape[arm];
  }
}

double BluntingDensity::add_readings(DensitySlopes& slopes) {
  weigh_checkpoints();
  place_curves();
  double log_likelihood = terms_.evaluate(parts_.robust);
  log_likelihood += add_censored(slopes);
  add_run_slopes(slopes);
  for (std::size_t i = 0; i < weights_.class_of.size(); ++i) {
    weighed_[weights_.class_of[i]].squares += terms_.weighted_squares[i];
  }
  for (std::size_t w = 0; w < weighed_.size(); ++w) {
    const Weighed& weighed = weighed_[w];
    log_likelihood -= 0.5 * weights_.count[w] * std::log(weighed.variance);
    const double by_log_variance = (weighed.squares - weights_.count[w]) * weighed.precision;
    slopes.log_reading_scatter += by_log_variance * weighed.repeat_variance;
    slopes.log_checkpoint_scatter += by_log_variance * spot_variance_;
  }
  // The repeats about their own centres.
  const double degrees = data_.repeat_degrees_of_freedom;
  const double squares =
      data_.repeat_sum_of_squares / (values_.reading_scatter * values_.reading_scatter);
  log_likelihood += -degrees * std::log(values_.reading_scatter) - 0.5 * squares;
  slopes.log_reading_scatter += squares - degrees;
  return log_likelihood;
}

}  // namespace keenfall::blunting
