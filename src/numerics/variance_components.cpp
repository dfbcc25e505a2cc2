#include "numerics/variance_components.h"

#include "base/require.h"
#include "numerics/summaries.h"

#include <boost/math/tools/minima.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace keenfall::numerics {

namespace {

struct Groups {
  std::vector<double> sizes;
  std::vector<double> means;
  double within_squares = 0;
  double count = 0;
  bool balanced = true;
};

Groups summed_up(std::span<const std::vector<double>> groups) {
  Groups summary;
  for (const std::vector<double>& group : groups) {
    base::require(!group.empty(), "no group may be empty");
    summary.sizes.push_back(static_cast<double>(group.size()));
    summary.means.push_back(mean_of(group));
    summary.count += summary.sizes.back();
    for (const double value : group) {
      summary.within_squares += (value - summary.means.back()) * (value - summary.means.back());
    }
    if (group.size() != groups.front().size()) summary.balanced = false;
  }
  return summary;
}

// What REML comes to at one ratio of the variances, between over within.
struct AtRatio {
  double mean = 0;
  double weight = 0;  // the inverse of the mean's variance, in units of the variance within
  double within = 0;  // the variance within that suits best
  double log_likelihood = 0;
};

AtRatio at_ratio(const Groups& groups, double ratio) {
  AtRatio at;
  double log_determinant = 0;
  double sum = 0;
  for (std::size_t i = 0; i < groups.sizes.size(); ++i) {
    const double spread = 1 + groups.sizes[i] * ratio;
    const double weight = groups.sizes[i] / spread;
    at.weight += weight;
    sum += weight * groups.means[i];
    log_determinant += std::log(spread);
  }
  at.mean = sum / at.weight;
  double squares = groups.within_squares;
  for (std::size_t i = 0; i < groups.sizes.size(); ++i) {
    const double off = groups.means[i] - at.mean;
    squares += groups.sizes[i] / (1 + groups.sizes[i] * ratio) * off * off;
  }
  const double freedom = groups.count - 1;
  at.within = squares / freedom;
  at.log_likelihood = -0.5 * (freedom * (1 + std::log(2 * std::numbers::pi * at.within)) +
                              log_determinant + std::log(at.weight));
  return at;
}

double closed_form_ratio(const Groups& groups) {
  const double size = groups.sizes.front();
  const double within =
      groups.within_squares / (groups.count - static_cast<double>(groups.sizes.size()));
  return std::max(0.0, (variance_of(groups.means) - within / size) / within);
}

// The search runs along the share of the variance that lies between, in [0, 1).
double best_ratio(const Groups& groups) {
  const auto loss = [&](double share) {
    return -at_ratio(groups, share / (1 - share)).log_likelihood;
  };
  constexpr int kBits = 40;
  constexpr double kLargestShare = 1 - 1e-9;
  const auto [share, least] =
      boost::math::tools::brent_find_minima(loss, 0.0, kLargestShare, kBits);
  return loss(0) <= least ? 0 : share / (1 - share);
}

}  // namespace

VarianceComponents variance_components(std::span<const std::vector<double>> groups) {
  base::require(groups.size() >= 2, "variance between groups needs at least two of them");
  const Groups summary = summed_up(groups);
  base::require(summary.within_squares > 0, "variance within groups needs values that differ");
  const double ratio = summary.balanced ? closed_form_ratio(summary) : best_ratio(summary);
  const AtRatio best = at_ratio(summary, ratio);
  VarianceComponents found{.mean = best.mean,
                           .mean_standard_error = std::sqrt(best.within / best.weight),
                           .sd_between = std::sqrt(ratio * best.within),
                           .sd_within = std::sqrt(best.within),
                           .log_likelihood = best.log_likelihood,
                           .share_between = ratio / (1 + ratio)};
  found.repeatability_limit = 1.96 * std::numbers::sqrt2 * found.sd_within;
  return found;
}

}  // namespace keenfall::numerics
