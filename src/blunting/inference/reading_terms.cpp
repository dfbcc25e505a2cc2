// Compiled with -ffast-math (CMakeLists.txt), so that the compiler may work on several checkpoints
// at once, by glibc's vector functions where they are (within 4 units in the last place).
#include "blunting/inference/reading_terms.h"

#include "blunting/inference/robust_errors.h"

#include <algorithm>
#include <cmath>

// Where the processor has wider registers they are used. Sanitizers and clang cannot do that.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && \
    !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
#define KEENFALL_FOR_WIDER_REGISTERS __attribute__((target_clones("arch=x86-64-v3", "default")))
#else
#define KEENFALL_FOR_WIDER_REGISTERS
#endif

namespace keenfall::blunting {

namespace {

// Beyond these exp is as good as none or all there is, and slow near the ends of what can be held.
constexpr double kSmallestLogPower = -600;
constexpr double kLargestLogPower = 600;

// With one logarithm for every eight factors.
inline double log_of_product(const std::vector<double>& factors) {
  constexpr std::size_t kTogether = 8;
  const std::size_t stride = factors.size() / kTogether;
  double log_product = 0;
  for (std::size_t i = 0; i < stride; ++i) {
    double product = 1;
    for (std::size_t k = 0; k < kTogether; ++k) product *= factors[i + k * stride];
    log_product += std::log(product);
  }
  double rest = 1;
  for (std::size_t i = kTogether * stride; i < factors.size(); ++i) rest *= factors[i];
  return log_product + std::log(rest);
}

template <bool robust>
inline ReadingLikelihood evaluated(ReadingTerms& terms, const ReadingVariances& variances) {
  const double* const log_cuts = terms.log_cuts.data();
  const double* const log_bluntness = terms.log_bluntness.data();
  const double* const relative_variance = terms.relative_variance.data();
  const double* const counted = terms.counted.data();
  const double* const log_start = terms.log_start.data();
  const double* const log_half_keenness = terms.log_half_keenness.data();
  const double* const shape = terms.shape.data();
  double* const mean = terms.mean.data();
  double* const by_mean = terms.by_mean.data();
  double* const by_log_power = terms.by_log_power.data();
  double* const by_shape = terms.by_shape.data();
  double* const ratio = terms.ratio.data();
  double* const variance = terms.variance.data();
  const std::size_t count = terms.log_cuts.size();
  double squares = 0;
  double by_spot = 0;
  double by_one_reading = 0;
#ifndef __clang__
#pragma GCC ivdep  // none of these overlap, which the compiler cannot know
#endif
  for (std::size_t i = 0; i < count; ++i) {
    const double log_time = log_cuts[i] - log_half_keenness[i];
    const double below = std::min(shape[i] * log_time, kLargestLogPower);
    const double power = std::exp(std::max(below, kSmallestLogPower));
    const double share = power / (1 + power);
    mean[i] = log_start[i] + std::log(1 + power);
    const double residual = log_bluntness[i] - mean[i];
    const double own_variance = variances.spot + relative_variance[i] * variances.one_reading;
    const double precision = counted[i] / own_variance;
    const double square = residual * residual * precision;
    double weight = 1;
    if constexpr (robust) {
      weight = robust_weight(square);
      ratio[i] = 1 + 0.25 * square;
    } else {
      squares += square;
    }
    variance[i] = counted[i] * own_variance + (1 - counted[i]);
    by_mean[i] = weight * residual * precision;
    by_log_power[i] = by_mean[i] * share;
    by_shape[i] = by_log_power[i] * log_time;
    const double by_variance = (weight * square - counted[i]) * precision;
    by_spot += by_variance;
    by_one_reading += by_variance * relative_variance[i];
  }
  const double of_squares = robust ? -2.5 * log_of_product(terms.ratio) : -0.5 * squares;
  return {.log_likelihood = of_squares - 0.5 * log_of_product(terms.variance),
          .by_log_spot = 0.5 * by_spot * variances.spot,
          .by_log_one_reading = 0.5 * by_one_reading * variances.one_reading};
}

KEENFALL_FOR_WIDER_REGISTERS
ReadingLikelihood evaluated_robustly(ReadingTerms& terms, const ReadingVariances& variances) {
  return evaluated<true>(terms, variances);
}

KEENFALL_FOR_WIDER_REGISTERS
ReadingLikelihood evaluated_as_gaussian(ReadingTerms& terms, const ReadingVariances& variances) {
  return evaluated<false>(terms, variances);
}

}  // namespace

ReadingTerms::ReadingTerms(const BluntingData& data) {
  for (const RunData& run : data.runs) {
    first_of_run.push_back(log_cuts.size());
    for (const Checkpoint& checkpoint : run.checkpoints) {
      if (checkpoint.below_resolution) censored.push_back(log_cuts.size());
      log_cuts.push_back(checkpoint.cuts > 0 ? checkpoint.log_cuts : kLogOfNoCuts);
      log_bluntness.push_back(checkpoint.log_bluntness);
      relative_variance.push_back(checkpoint.relative_variance);
      counted.push_back(checkpoint.below_resolution ? 0 : 1);
    }
  }
  first_of_run.push_back(log_cuts.size());
  for (std::vector<double>* const column : {&log_start,
                                            &log_half_keenness,
                                            &shape,
                                            &mean,
                                            &by_mean,
                                            &by_log_power,
                                            &by_shape,
                                            &ratio,
                                            &variance}) {
    column->resize(log_cuts.size());
  }
}

ReadingLikelihood ReadingTerms::evaluate(bool robust, const ReadingVariances& variances) {
  return robust ? evaluated_robustly(*this, variances) : evaluated_as_gaussian(*this, variances);
}

}  // namespace keenfall::blunting
