#include "sharpening/best_moment.h"

#include "base/require.h"

#include <boost/math/tools/minima.hpp>
#include <cmath>
#include <cstddef>
#include <limits>

namespace keenfall::sharpening {

namespace {

constexpr int kGridSteps = 400;
constexpr double kCuts = 1000;

// Of a stretch that holds one valley.
template <class Cost>
double bottom_of(const Cost& cost_at, double low, double high) {
  constexpr int kHalfOfTheDigits = std::numeric_limits<double>::digits / 2;
  return boost::math::tools::brent_find_minima(cost_at, low, high, kHalfOfTheDigits).first;
}

}  // namespace

BestMoment best_moment(double setup_minutes,
                       const MinutesAfterCuts& minutes,
                       const CutsStretch& stretch) {
  base::require(setup_minutes >= 0, "setting up takes no negative time");
  base::require(stretch.first > 0 && stretch.last > stretch.first, "a stretch of cuts rises");
  const auto cost_at = [&](double log_cuts) {
    const double cuts = std::exp(log_cuts);
    const double cost = kCuts * (setup_minutes + minutes(cuts)) / cuts;
    base::require(std::isfinite(cost), "minutes are finite over the stretch");
    return cost;
  };
  const double from = std::log(stretch.first);
  const double step = (std::log(stretch.last) - from) / kGridSteps;
  int best = 0;
  double best_cost = cost_at(from);
  for (int i = 1; i <= kGridSteps; ++i) {
    const double cost = cost_at(from + i * step);
    if (cost < best_cost) {
      best = i;
      best_cost = cost;
    }
  }
  if (best == 0) return {stretch.first, best_cost, Where::at_first};
  if (best == kGridSteps) return {stretch.last, best_cost, Where::at_last};

  const double found = bottom_of(cost_at, from + (best - 1) * step, from + (best + 1) * step);
  return {std::exp(found), cost_at(found), Where::inside};
}

double depth_after_um(std::span<const DamageSeen> seen, double cuts) {
  base::require(!seen.empty() && cuts >= 0, "damage was seen after some cuts");
  DamageSeen before;
  DamageSeen after = seen.front();
  for (std::size_t i = 1; i < seen.size() && cuts > after.cuts; ++i) {
    before = after;
    after = seen[i];
  }
  base::require(after.cuts > before.cuts, "cuts rise from point to point");
  return before.depth_um +
         (after.depth_um - before.depth_um) * (cuts - before.cuts) / (after.cuts - before.cuts);
}

}  // namespace keenfall::sharpening
