#include "wear/edge_line.h"
#include "wear/apex_readings.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace keenfall::wear {
namespace {

// An edge of 250 whole teeth.
EdgeStart toothed(double depth_um, double spacing_um) {
  return {
      .finish = {.land_width_um = 0.8, .tooth_depth_um = depth_um, .tooth_spacing_um = spacing_um},
      .length_mm = 250 * spacing_um * 1e-3};
}

// Definition: the longest that is not above what was asked and goes into half the spacing.
TEST(Segments, AreTheLongestThatDivideHalfTheSpacing) {
  for (const auto& [spacing_um, segment_um] : {std::pair{28.0, 3.5},
                                               {24.0, 4.0},
                                               {32.0, 4.0},
                                               {8.0, 4.0},
                                               {9.0, 2.25},
                                               {30.0, 3.75},
                                               {5.0, 2.5},
                                               {2.0, 1.0},
                                               {5000.0, 4.0}}) {
    EXPECT_NEAR(segment_length_um(toothed(6, spacing_um)), segment_um, 1e-13) << spacing_um;
  }
  EXPECT_EQ(segment_length_um(toothed(0, 28)), 4);
}

// Rounding of an asked length that goes in exactly makes no shorter segments.
TEST(Segments, AreThoseAskedWhereTheyGoIn) {
  for (int in_half = 1; in_half < 2000; ++in_half) {
    EdgeStart start = toothed(6, 0.7);
    start.longest_segment_um = 0.35 / in_half;
    EXPECT_NEAR(segment_length_um(start) / start.longest_segment_um, 1, 1e-12) << in_half;
  }
}

TEST(Segments, AreCountedAsTheyAreUsed) {
  EXPECT_EQ(segment_count(toothed(6, 28)), 2000);
  EXPECT_EQ(segment_count(toothed(0, 28)), 1750);
  EXPECT_EQ(started_edge(toothed(6, 28)).height_um.size(), 2000);
  EXPECT_EQ(started_edge(toothed(6, 28)).segment_length_um, 3.5);
}

TEST(StartedEdge, HasTeethOfTheAskedDepthAboutZero) {
  for (const double spacing_um : {8.0, 9.1, 24.0, 28.0, 30.0, 32.0, 77.7, 5000.0}) {
    const EdgeLine edge = started_edge(toothed(6, spacing_um));
    const auto [low, high] = std::ranges::minmax_element(edge.height_um);

    EXPECT_NEAR(*high - *low, 6, 1e-12) << spacing_um;
    EXPECT_NEAR(std::accumulate(edge.height_um.begin(), edge.height_um.end(), 0.0) /
                    static_cast<double>(edge.height_um.size()),
                0,
                1e-12)
        << spacing_um;
  }
}

// A zigzag has one slope throughout, 2 depth / spacing: a slice reads land / (1 + c_s slope), and
// the coarse finish 0.8 / (1 + 6/14) = 0.56 um.
TEST(StartedEdge, ReadsInASliceAsItsSlopeSays) {
  EXPECT_NEAR(slice_reading_um(started_edge(toothed(6, 28)), {}), 0.56, 1e-12);
  for (const double spacing_um : {8.0, 24.0, 32.0, 77.7}) {
    const EdgeLine edge = started_edge(toothed(6 * spacing_um / 28, spacing_um));

    EXPECT_NEAR(slice_reading_um(edge, {}), 0.56, 1e-12) << spacing_um;
    EXPECT_NEAR(slice_reading_um(edge, {.slope_gain = 3}), 0.8 / (1 + 3 * 6.0 / 14), 1e-12);
  }
}

}  // namespace
}  // namespace keenfall::wear
