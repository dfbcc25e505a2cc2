// The blunting curve: how a reading rises from its start with the cuts.
//
//   b(x) = b0 (1 + (x / tau)^p)
//
// x cuts, b0 the start reading, tau the half keenness (cuts at which the reading has doubled), p
// the shape. It is the log-logistic curve of dose-response work (b0 the upper level, tau the median
// effective dose, p the slope: Finney 1971, Probit Analysis; Ritz et al. 2015, PLoS ONE 10,
// e0146021), written for bluntness, which rises; readings where higher is keener enter as
// 1/reading. All in natural logarithms; x >= 0, shape > 0. Method page:
// docs/methods/blunting-curve.md
#pragma once

namespace keenfall::blunting {

struct LogLogistic {
  double log_start = 0;          // log b0
  double log_half_keenness = 0;  // log tau, cuts
  double shape = 1;              // p

  bool operator==(const LogLogistic&) const = default;
};

// log b(x); log_cuts = log x, -infinity for x = 0.
[[nodiscard]] double log_bluntness(const LogLogistic& curve, double log_cuts);

// log of the cuts at which b = level * b0; level > 1: log tau + log(level - 1) / p.
[[nodiscard]] double log_cuts_to_level(const LogLogistic& curve, double level);

// log of the cuts at which log b reaches log_reading; -infinity when the start is already there.
[[nodiscard]] double log_cuts_to_reading(const LogLogistic& curve, double log_reading);

}  // namespace keenfall::blunting
