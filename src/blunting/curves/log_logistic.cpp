#include "blunting/curves/log_logistic.h"

#include "base/require.h"

#include <cmath>

namespace keenfall::blunting {

double log_bluntness(const LogLogistic& curve, double log_cuts) {
  const double log_rise = curve.shape * (log_cuts - curve.log_half_keenness);
  // log(1 + e^v), without overflow for large v.
  return curve.log_start + (log_rise > 0 ? log_rise + std::log1p(std::exp(-log_rise))
                                         : std::log1p(std::exp(log_rise)));
}

double log_cuts_to_level(const LogLogistic& curve, double level) {
  base::require(level > 1, "a level is above the start: more than 1 time");
  return curve.log_half_keenness + std::log(level - 1) / curve.shape;
}

double log_cuts_to_reading(const LogLogistic& curve, double log_reading) {
  const double log_level = log_reading - curve.log_start;
  if (log_level <= 0) return -HUGE_VAL;
  return curve.log_half_keenness + std::log(std::expm1(log_level)) / curve.shape;
}

}  // namespace keenfall::blunting
