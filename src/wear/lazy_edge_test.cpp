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

// Conservation: the lands tell as much metal as was booked, however long the edge and however stiff
// the medium (down to 1 nm of compliance under teeth of 6 um).
TEST(LoadShares, TakeTheMetalBookedFromLongEdgesInStiffMedia) {
  for (const double length_mm : {1.0, 20.0, 200.0}) {
    for (const double compliance_um : {0.001, 0.1, 15.0}) {
      LazyEdge edge(
          {.finish = {.tooth_depth_um = 6, .tooth_spacing_um = 28}, .length_mm = length_mm},
          {.steel = {.flow_stress_mpa = 2000}, .wedge = wedge_of({15})});
      const EdgeLine start = edge.line(0);
      edge.settle(0, compliance_um);
      for (int block = 0; block < 20; ++block) edge.settle(0.05, compliance_um);
      const EdgeLine worn = edge.line(0);

      double told_um3 = 0;
      for (std::size_t i = 0; i < worn.land_width_um.size(); ++i) {
        const double before = start.land_width_um[i];
        const double after = worn.land_width_um[i];
        told_um3 += (after * after - before * before) / (4 * wedge_of({15}).tangent) *
                    worn.segment_length_um;
      }
      EXPECT_NEAR(told_um3 / edge.lost().worn_um3, 1, 1e-11) << length_mm << ' ' << compliance_um;
      EXPECT_GT(edge.lost().worn_um3, 0);
    }
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
