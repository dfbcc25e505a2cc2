// For tests: how far a density's gradient lies from central differences of its value.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

namespace keenfall::blunting::testing {

// The largest relative difference, at the starts of three chains.
template <class Density>
double worst_gradient_error(Density& density) {
  double worst = 0;
  for (std::uint64_t chain = 0; chain < 3; ++chain) {
    std::vector<double> q = density.start_for({5}, chain);
    std::vector<double> gradient(q.size());
    std::vector<double> unused(q.size());
    (void)density(q, gradient);
    for (std::size_t i = 0; i < q.size(); ++i) {
      const double h = 1e-5;
      const double here = q[i];
      q[i] = here + h;
      const double above = density(q, unused);
      q[i] = here - h;
      const double below = density(q, unused);
      q[i] = here;
      const double slope = (above - below) / (2 * h);
      worst = std::max(worst, std::abs(slope - gradient[i]) / (1 + std::abs(slope)));
    }
  }
  return worst;
}

}  // namespace keenfall::blunting::testing
