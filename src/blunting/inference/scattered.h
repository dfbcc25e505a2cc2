// A level that scatters about a centre, in the parametrisation that samples well.
//
//   theta = c + s^(1 - w) (z - w c),   z ~ N(w c, s^w)   so that   theta ~ N(c, s)
//
// w = 1 samples theta itself (centred: good when the data say much about it), w = 0 a standard
// normal (non-centred: good when they say little), values between are a compromise
// (Papaspiliopoulos, Roberts & Sköld 2003; Gorinova, Moore & Hoffman 2020). The posterior does not
// depend on w.
#pragma once

#include <cmath>

namespace keenfall::blunting {

struct Scattered {
  double centring = 0;      // w, 0 to 1
  double offset = 0;        // z - w c
  double spread = 1;        // s^(1 - w)
  double prior_factor = 1;  // s^(-2 w)
  double log_scatter = 0;   // log s

  [[nodiscard]] double level(double centre) const { return centre + spread * offset; }

  [[nodiscard]] double log_prior() const {
    return -centring * log_scatter - 0.5 * offset * offset * prior_factor;
  }

  // Derivatives of log_prior() + f(level), given f' at the level.
  [[nodiscard]] double by_z(double f) const { return f * spread - offset * prior_factor; }
  [[nodiscard]] double by_centre(double f) const {
    return f * (1 - centring * spread) + centring * offset * prior_factor;
  }
  [[nodiscard]] double by_log_scatter(double f) const {
    return f * (1 - centring) * spread * offset - centring +
           centring * offset * offset * prior_factor;
  }
};

[[nodiscard]] inline Scattered scattered(double z, double centre, double log_scatter, double w) {
  return {.centring = w,
          .offset = z - w * centre,
          .spread = std::exp((1 - w) * log_scatter),
          .prior_factor = std::exp(-2 * w * log_scatter),
          .log_scatter = log_scatter};
}

}  // namespace keenfall::blunting
