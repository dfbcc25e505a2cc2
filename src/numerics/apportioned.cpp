#include "numerics/apportioned.h"

#include "base/require.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace keenfall::numerics {

std::vector<std::size_t> apportioned(std::span<const double> weights, std::size_t total) {
  const double all = std::accumulate(weights.begin(), weights.end(), 0.0);
  base::require(all > 0, "something is shared out by weights of which one is above 0");
  std::vector<std::size_t> shares;
  double reached = 0;
  std::size_t given = 0;
  for (const double weight : weights) {
    reached += weight;
    const double part = reached / all * static_cast<double>(total);
    const std::size_t until =
        std::clamp(static_cast<std::size_t>(std::llround(part)), given, total);
    shares.push_back(until - given);
    given = until;
  }
  shares.back() += total - given;
  return shares;
}

}  // namespace keenfall::numerics
