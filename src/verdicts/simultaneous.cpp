#include "verdicts/simultaneous.h"

#include "base/require.h"
#include "numerics/summaries.h"

#include <algorithm>
#include <cmath>

namespace keenfall::verdicts {

namespace {

// A comparison's own interval at one level, in logs.
struct Sides {
  double median = 0;
  double below = 0;
  double above = 0;
};

Sides sides_of(const numerics::Interval& log_ratio, bool at_95) {
  const double lo = at_95 ? log_ratio.lo95 : log_ratio.lo90;
  const double hi = at_95 ? log_ratio.hi95 : log_ratio.hi90;
  return {
      .median = log_ratio.median, .below = log_ratio.median - lo, .above = hi - log_ratio.median};
}

double deviation_of(double draw, const Sides& sides) {
  const double side = draw < sides.median ? sides.below : sides.above;
  return side > 0 ? std::abs(draw - sides.median) / side : 0;
}

// How many single half-widths hold the whole family with the given probability.
double stretch_for(std::span<const std::vector<double>> log_ratios,
                   std::span<const Sides> sides,
                   double probability) {
  std::vector<double> largest(log_ratios.front().size());
  for (std::size_t c = 0; c < log_ratios.size(); ++c) {
    for (std::size_t d = 0; d < largest.size(); ++d) {
      largest[d] = std::max(largest[d], deviation_of(log_ratios[c][d], sides[c]));
    }
  }
  std::ranges::sort(largest);
  return std::max(1.0, numerics::quantile_of_sorted(largest, probability));
}

}  // namespace

std::vector<RatioBounds> simultaneous_bounds(std::span<const std::vector<double>> log_ratios) {
  base::require(!log_ratios.empty() && !log_ratios.front().empty(),
                "simultaneous bounds need a comparison with draws");
  std::vector<Sides> at_90;
  std::vector<Sides> at_95;
  std::vector<RatioBounds> bounds;
  for (const std::vector<double>& draws : log_ratios) {
    base::require(draws.size() == log_ratios.front().size(), "comparisons are drawn jointly");
    const numerics::Interval interval = numerics::interval_of(draws);
    at_90.push_back(sides_of(interval, false));
    at_95.push_back(sides_of(interval, true));
    bounds.push_back(bounds_of(numerics::exp_of(interval)));
  }
  if (log_ratios.size() == 1) return bounds;
  const double stretch_90 = stretch_for(log_ratios, at_90, 0.90);
  const double stretch_95 = stretch_for(log_ratios, at_95, 0.95);
  for (std::size_t c = 0; c < bounds.size(); ++c) {
    bounds[c] = {.lo90 = std::exp(at_90[c].median - stretch_90 * at_90[c].below),
                 .hi90 = std::exp(at_90[c].median + stretch_90 * at_90[c].above),
                 .lo95 = std::exp(at_95[c].median - stretch_95 * at_95[c].below),
                 .hi95 = std::exp(at_95[c].median + stretch_95 * at_95[c].above)};
  }
  return bounds;
}

}  // namespace keenfall::verdicts
