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

// Of a normal's standard error, or of the scale of the t that comes closest to it.
ReadingVariances BluntingDensity::reading_variances() const {
  const double factor = parts_.robust ? kRobustVariance : 1;
  return {.spot = factor * values_.checkpoint_scatter * values_.checkpoint_scatter,
          .one_reading = factor * values_.reading_scatter * values_.reading_scatter};
}

void BluntingDensity::place_curves() {
  for (std::size_t r = 0; r < data_.runs.size(); ++r) {
    const double shape = values_.shape[data_.runs[r].arm];
    for (std::size_t i = terms_.first_of_run[r]; i < terms_.first_of_run[r + 1]; ++i) {
      terms_.log_start[i] = values_.run_start[r];
      terms_.log_half_keenness[i] = values_.run_half[r];
      terms_.shape[i] = shape;
    }
  }
}

// Those below the resolution, which the terms left out.
void BluntingDensity::add_censored(const ReadingVariances& variances, ReadingLikelihood& found) {
  const double side = data_.higher_is_keener() ? -1 : 1;
  for (const std::size_t i : terms_.censored) {
    const double of_reading = terms_.relative_variance[i] * variances.one_reading;
    const CensoredTerm term = censored_term(terms_.log_bluntness[i] - terms_.mean[i],
                                            variances.spot + of_reading + kZeroFuzz * kZeroFuzz,
                                            side,
                                            parts_.robust);
    found.log_likelihood += term.log_likelihood;
    found.by_log_one_reading += term.by_variance * of_reading;
    found.by_log_spot += term.by_variance * variances.spot;
    const double log_time = terms_.log_cuts[i] - terms_.log_half_keenness[i];
    const double share = -std::expm1(terms_.log_start[i] - terms_.mean[i]);
    terms_.by_mean[i] = term.by_mean;
    terms_.by_log_power[i] = term.by_mean * share;
    terms_.by_shape[i] = terms_.by_log_power[i] * log_time;
  }
}

void BluntingDensity::add_run_slopes(DensitySlopes& slopes) {
  for (std::size_t r = 0; r < data_.runs.size(); ++r) {
    double by_start = 0;
    double by_log_power = 0;
    double by_shape = 0;
    for (std::size_t i = terms_.first_of_run[r]; i < terms_.first_of_run[r + 1]; ++i) {
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
  const ReadingVariances variances = reading_variances();
  place_curves();
  ReadingLikelihood found = terms_.evaluate(parts_.robust, variances);
  add_censored(variances, found);
  add_run_slopes(slopes);
  double log_likelihood = found.log_likelihood;
  slopes.log_reading_scatter += 2 * found.by_log_one_reading;
  slopes.log_checkpoint_scatter += 2 * found.by_log_spot;
  // The repeats about their own centres.
  const double degrees = data_.repeat_degrees_of_freedom;
  const double squares =
      data_.repeat_sum_of_squares / (values_.reading_scatter * values_.reading_scatter);
  log_likelihood += -degrees * std::log(values_.reading_scatter) - 0.5 * squares;
  slopes.log_reading_scatter += squares - degrees;
  return log_likelihood;
}

}  // namespace keenfall::blunting
