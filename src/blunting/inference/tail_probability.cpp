#include "blunting/inference/tail_probability.h"

#include <cmath>
#include <numbers>

namespace keenfall::blunting {

LogTail normal_log_tail(double z) {
  constexpr double kLogRootTwoPi = 0.91893853320467274178;
  double log_probability = 0;
  if (z > -30) {
    log_probability = std::log(0.5 * std::erfc(-z / std::numbers::sqrt2));
  } else {
    // Mills' ratio, Abramowitz & Stegun 1964, 26.2.12.
    const double inverse_square = 1 / (z * z);
    log_probability = -0.5 * z * z - kLogRootTwoPi - std::log(-z) +
                      std::log1p(-inverse_square * (1 - 3 * inverse_square));
  }
  return {.log_probability = log_probability,
          .derivative = std::exp(-0.5 * z * z - kLogRootTwoPi - log_probability)};
}

LogTail student4_log_tail(double z) {
  // F(z) = 1/2 + 3/4 (S - S^3/3) with S = (z/2) / sqrt(1 + (z/2)^2); for negative z the same in
  // delta = 1 - |S|, which does not cancel: F = 3/4 (delta^2 - delta^3/3).
  const double half = std::abs(z) / 2;
  const double root = std::sqrt(1 + half * half);
  const double delta = 1 / (root * (root + half));
  const double lower = 0.75 * (delta * delta - delta * delta * delta / 3);
  const double probability = z < 0 ? lower : 1 - lower;
  const double density = 0.375 / (root * root * root * root * root);
  return {.log_probability = std::log(probability), .derivative = density / probability};
}

}  // namespace keenfall::blunting
