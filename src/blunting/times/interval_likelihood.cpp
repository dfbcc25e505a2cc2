#include "blunting/times/interval_likelihood.h"

#include "base/require.h"

#include <cmath>

namespace keenfall::blunting {

namespace {

// Of the standard logistic distribution; finite for every finite z.
double log_share_below(double z) {
  return z < 0 ? z - std::log1p(std::exp(z)) : -std::log1p(std::exp(-z));
}
double share_below(double z) { return std::exp(log_share_below(z)); }
double share_above(double z) { return share_below(-z); }
double density_at(double z) { return share_below(z) * share_above(z); }

}  // namespace

TimeLikelihood likelihood_of_bounds(const LogTimeBounds& bounds, double location, double scale) {
  base::require(scale > 0, "the scale of a time is above zero");
  base::require(bounds.after <= bounds.by, "a time's bounds stand in order");
  const double a = (bounds.after - location) / scale;
  const double b = (bounds.by - location) / scale;
  const double square = scale * scale;
  if (std::isinf(a) && std::isinf(b)) return {};
  if (std::isinf(b)) {  // S(a)
    const double below = share_below(a);
    return {.log_likelihood = log_share_below(-a),
            .by_location = below / scale,
            .by_log_scale = a * below,
            .by_location_twice = -density_at(a) / square};
  }
  if (std::isinf(a)) {  // F(b)
    const double above = share_above(b);
    return {.log_likelihood = log_share_below(b),
            .by_location = -above / scale,
            .by_log_scale = -b * above,
            .by_location_twice = -density_at(b) / square};
  }
  if (a == b) {  // the density F(a) S(a) / scale
    const double slope = share_above(a) - share_below(a);
    return {.log_likelihood = log_share_below(a) + log_share_below(-a) - std::log(scale),
            .by_location = -slope / scale,
            .by_log_scale = -a * slope - 1,
            .by_location_twice = -2 * density_at(a) / square};
  }
  // F(b) - F(a) = F(b) S(a) (1 - exp(a - b)), an identity of the logistic distribution.
  const double width = b - a;
  return {
      .log_likelihood = log_share_below(b) + log_share_below(-a) + std::log(-std::expm1(-width)),
      .by_location = -(share_above(b) - share_below(a)) / scale,
      .by_log_scale = -(b * share_above(b) - a * share_below(a) + width / std::expm1(width)),
      .by_location_twice = -(density_at(b) + density_at(a)) / square};
}

}  // namespace keenfall::blunting
