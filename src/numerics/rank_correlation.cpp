#include "numerics/rank_correlation.h"

#include "base/require.h"
#include "numerics/rearrangement.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace keenfall::numerics {

double rank_correlation(std::span<const double> a, std::span<const double> b) {
  base::require(a.size() == b.size(), "both are as long");
  const auto is_a_number = [](double number) { return !std::isnan(number); };
  base::require(std::ranges::all_of(a, is_a_number) && std::ranges::all_of(b, is_a_number),
                "only numbers have ranks");
  const std::vector<double> x = mid_ranks(a);
  const std::vector<double> y = mid_ranks(b);
  const double middle = (static_cast<double>(a.size()) + 1) / 2;
  double xx = 0;
  double yy = 0;
  double xy = 0;
  for (std::size_t i = 0; i < x.size(); ++i) {
    xx += (x[i] - middle) * (x[i] - middle);
    yy += (y[i] - middle) * (y[i] - middle);
    xy += (x[i] - middle) * (y[i] - middle);
  }
  return xx == 0 || yy == 0 ? 0 : xy / std::sqrt(xx * yy);
}

}  // namespace keenfall::numerics
