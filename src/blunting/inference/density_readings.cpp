// BluntingDensity: the likelihood of the readings.
#include "blunting/inference/density_slopes.h"
#include "blunting/inference/robust_errors.h"
#include "blunting/inference/tail_probability.h"

#include <algorithm>
#include <cmath>

namespace keenfall::blunting {

namespace {

// A zero says "below the resolution" only roughly: within a factor of two (common practice, no
// source).
constexpr double kZeroFuzz = 0.6931471805599453;
constexpr double kLargestLogRise = 600;  // exp of it is still finite

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

double BluntingDensity::add_run_readings(std::size_t r, Slopes& slopes) {
  const RunData& run = data_.runs[r];
  const double shape = values_.shape[run.arm];
  const double side = data_.higher_is_keener() ? -1 : 1;
  const std::size_t* weight_class = &weights_.class_of[weights_.first_of_run[r]];
  double log_likelihood = 0;
  double by_start = 0;
  double by_half = 0;
  double by_shape = 0;
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
    const double residual = checkpoint.log_bluntness - mean;
    Weighed& weighed = weighed_[*weight_class++];
    double by_mean = 0;
    if (checkpoint.below_resolution) {
      const ResidualTerm term =
          censored_term(residual, weighed.variance + kZeroFuzz * kZeroFuzz, side, parts_.robust);
      log_likelihood += term.log_likelihood;
      by_mean = term.by_mean;
      slopes.log_reading_scatter += 2 * term.by_variance * weighed.repeat_variance;
      slopes.log_checkpoint_scatter += 2 * term.by_variance * spot_variance_;
    } else {
      const double square = residual * residual * weighed.precision;
      const double weight = parts_.robust ? robust_weight(square) : 1;
      by_mean = weight * residual * weighed.precision;
      weighed.squares += weight * square;
      if (parts_.robust) {
        ratios.multiply(1 + 0.25 * square);
      } else {
        log_likelihood -= 0.5 * square;
      }
    }
    by_start += by_mean;
    by_half -= by_mean * shape * share;
    by_shape += by_mean * share * log_time;
  }
  slopes.run_start[r] = by_start;
  slopes.run_half[r] = by_half;
  slopes.log_shape[run.arm] += by_shape * shape;
  return log_likelihood - 2.5 * ratios.log();
}

double BluntingDensity::add_readings(Slopes& slopes) {
  weigh_checkpoints();
  double log_likelihood = 0;
  for (std::size_t r = 0; r < data_.runs.size(); ++r) log_likelihood += add_run_readings(r, slopes);
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
