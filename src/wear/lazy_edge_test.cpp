#include "wear/lazy_edge.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace keenfall::wear {
namespace {

LazyEdge toothed_edge() {
  return {{.finish = {.tooth_depth_um = 6, .tooth_spacing_um = 28}, .length_mm = 1},
          {.steel = {.flow_stress_mpa = 2000}, .wedge = wedge_of({15})}};
}

// Definition: shares average 1, and the ratio of two is exp of their difference in height /
// compliance.
TEST(LoadShares, AverageOneAndFallWithHeight) {
  LazyEdge edge = toothed_edge();
  edge.settle(0, 15);
  const auto shares = edge.load_shares();
  const EdgeLine line = edge.line(0);

  EXPECT_NEAR(
      std::accumulate(shares.begin(), shares.end(), 0.0) / static_cast<double>(shares.size()),
      1,
      1e-13);
  for (std::size_t i = 1; i < shares.size(); ++i) {
    EXPECT_NEAR(
        shares[i] / shares[0], std::exp((line.height_um[i] - line.height_um[0]) / 15), 1e-12);
  }
}

TEST(LoadShares, WearTeethDown) {
  LazyEdge edge = toothed_edge();
  const auto relief = [](const EdgeLine& line) {
    const auto [low, high] = std::ranges::minmax_element(line.height_um);
    return *high - *low;
  };
  const double before = relief(edge.line(0));
  for (int block = 0; block < 200; ++block) edge.settle(block == 0 ? 0 : 0.5, 3);

  EXPECT_LT(relief(edge.line(0)), before / 2);
}

}  // namespace
}  // namespace keenfall::wear
