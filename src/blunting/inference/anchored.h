// Levels that scatter about a centre, in coordinates that stay about standard normal.
//
// A level theta ~ N(c, s) that the data place near an anchor t with information a (one over a
// variance) has, for fixed c and s, about the posterior N(t + k (c - t), s^2 k), k = 1 / (1 + a
// s^2). Sampling
//
//   theta = t + k (c - t) + s sqrt(k) z
//
// in z removes the funnel of a hierarchical model at both ends: as s -> 0 it is non-centred about
// c, as s -> infinity it follows the data. It is the conditional form of partial non-centring
// (Papaspiliopoulos, Roberts & Sköld 2003). The posterior is the same for any anchors; only the
// sampler's path differs.
#pragma once

#include <cmath>

namespace keenfall::blunting {

// Where the data alone would put a level.
struct Anchor {
  double level = 0;
  double information = 0;  // >= 0; none: the level is sampled about its centre

  bool operator==(const Anchor&) const = default;
};

// A level about a centre. All derivatives are of log_prior() + f(level), f' given as `slope`.
struct AnchoredLevel {
  double z = 0;
  double scatter = 1;    // s
  double towards = 1;    // k
  double spread = 1;     // s sqrt(k)
  double to_anchor = 0;  // t - c
  double pull = 0;       // (theta - c) / s^2
  double level = 0;      // theta

  [[nodiscard]] double log_prior() const { return log_normal() + 0.5 * std::log(towards); }
  // The prior of the level itself; what is left is half the log of `towards`.
  [[nodiscard]] double log_normal() const { return -0.5 * pull * pull * scatter * scatter; }
  [[nodiscard]] double by_z(double slope) const { return (slope - pull) * spread; }
  [[nodiscard]] double by_centre(double slope) const { return (slope - pull) * towards + pull; }
  [[nodiscard]] double by_anchor(double slope) const { return (slope - pull) * (1 - towards); }
  [[nodiscard]] double by_log_scatter(double slope) const {
    return (slope - pull) * towards * (2 * (1 - towards) * to_anchor + spread * z) +
           pull * pull * scatter * scatter - (1 - towards);
  }
  [[nodiscard]] double by_log_information(double slope) const {
    return (1 - towards) * ((slope - pull) * (towards * to_anchor - 0.5 * spread * z) - 0.5);
  }
};

[[nodiscard]] inline AnchoredLevel anchored_level(double z,
                                                  double centre,
                                                  double scatter,
                                                  const Anchor& anchor) {
  const double k = 1 / (1 + anchor.information * scatter * scatter);
  const double root = std::sqrt(k);
  const double to_anchor = anchor.level - centre;
  return {.z = z,
          .scatter = scatter,
          .towards = k,
          .spread = scatter * root,
          .to_anchor = to_anchor,
          .pull = anchor.information * k * to_anchor + root * z / scatter,
          .level = anchor.level - k * to_anchor + scatter * root * z};
}

// Where the data put the mean of n levels, each known with variance `error` beside the scatter.
struct MeanAnchor {
  double level = 0;
  double count = 1;
  double error = 0;  // >= 0

  bool operator==(const MeanAnchor&) const = default;
};

// A mean with a prior of its own: level = anchor + v z, 1 / v^2 = prior precision + n / (s^2 +
// error).
struct AnchoredMean {
  double z = 0;
  double spread = 1;        // v
  double by_log_s = 0;      // d log v / d log s
  double by_log_error = 0;  // d log v / d log error
  double level = 0;

  // Of log v + f(level).
  [[nodiscard]] double by_z(double slope) const { return slope * spread; }
  [[nodiscard]] double by_log_scatter(double slope) const {
    return (slope * spread * z + 1) * by_log_s;
  }
  [[nodiscard]] double by_log_information(double slope) const {
    return -(slope * spread * z + 1) * by_log_error;
  }
};

[[nodiscard]] inline AnchoredMean anchored_mean(double z,
                                                double prior_sd,
                                                double scatter,
                                                const MeanAnchor& anchor) {
  const double square = scatter * scatter;
  const double each = square + anchor.error;
  const double variance = 1 / (1 / (prior_sd * prior_sd) + anchor.count / each);
  const double spread = std::sqrt(variance);
  return {.z = z,
          .spread = spread,
          .by_log_s = variance * anchor.count * square / (each * each),
          .by_log_error = 0.5 * variance * anchor.count * anchor.error / (each * each),
          .level = anchor.level + spread * z};
}

}  // namespace keenfall::blunting
