#include "wear/apex_readings.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::wear {
namespace {

EdgeLine of_lands(std::vector<double> lands, std::vector<double> heights) {
  const std::size_t count = lands.size();
  return {.segment_length_um = 4,
          .land_width_um = std::move(lands),
          .height_um = std::move(heights),
          .fold_height_um = std::vector<double>(count, 0),
          .chip_depth_um = std::vector<double>(count, 0)};
}

// Weights exp(+-15/30) worked out by hand.
TEST(ApexReadings, PushFeelsHighPlacesMore) {
  const EdgeLine edge = of_lands({1, 3}, {15, -15});
  const double high = std::exp(0.5);
  const double low = std::exp(-0.5);

  EXPECT_NEAR(
      push_reading_um(edge, {.push_reach_um = 30}), (high * 1 + low * 3) / (high + low), 1e-12);
}

TEST(ApexReadings, SliceFindsKeenAndSteepPlaces) {
  const EdgeLine flat = of_lands({1, 4}, {0, 0});
  const EdgeLine steep = of_lands({1, 1}, {2, -2});

  EXPECT_NEAR(slice_reading_um(flat, {}), 2 / (1.0 + 0.25), 1e-12);
  EXPECT_NEAR(slice_reading_um(steep, {.slope_gain = 3}), 1 / (1 + 3 * 1.0), 1e-12);
  EXPECT_NEAR(slice_reading_um(steep, {.slope_gain = 0}), 1, 1e-12);
}

// Definition: with next to no reach only the highest places weigh, on however long an edge.
TEST(ApexReadings, OfNextToNoReachFeelTheHighestPlacesOnly) {
  for (const std::size_t teeth : {std::size_t{1}, std::size_t{20000}}) {
    std::vector<double> lands;
    std::vector<double> heights;
    for (std::size_t tooth = 0; tooth < teeth; ++tooth) {
      lands.insert(lands.end(), {1, 3, 5});
      heights.insert(heights.end(), {6, 3, -9});
    }
    const EdgeLine edge = of_lands(lands, heights);

    EXPECT_NEAR(push_reading_um(edge, {.push_reach_um = 0.001}), 1, 1e-12);
    EXPECT_NEAR(slice_reading_um(edge, {.slope_gain = 0, .slice_reach_um = 0.001}), 1, 1e-12);
  }
}

TEST(ApexReadings, FeelAShareOfFolds) {
  EdgeLine edge = of_lands({1, 1}, {0, 0});
  edge.fold_height_um = {4, 4};

  EXPECT_NEAR(push_reading_um(edge, {.fold_share = 0.5}), 3, 1e-12);
}

// (tan 25 + 0.3) / (tan 15 + 0.3) = 1.35; with friction 0.4 1.30, with 0.2 1.42.
TEST(CutForce, RisesWithTheAngleThroughTheFlanks) {
  for (const auto& [friction, ratio] : {std::pair{0.3, 1.35}, {0.4, 1.30}, {0.2, 1.42}}) {
    const CutForce flanks{
        .separation_newton_per_mm = 0, .bluntness_newton_per_mm_per_um = 0, .friction = friction};
    EXPECT_NEAR(force_newton_per_mm(1, wedge_of({25}), flanks) /
                    force_newton_per_mm(1, wedge_of({15}), flanks),
                ratio,
                0.006);
  }
}

TEST(DamageSummary, CountsChipsOnceAndOnlyWhereTheyShow) {
  const EdgeLine start = of_lands({1, 1, 1, 1, 1}, {0, 0, 0, 0, 0});
  EdgeLine edge = start;
  edge.chip_depth_um = {12, 15, 3, 11, 0};
  edge.height_um = {-12, -15, -3, -11, 0};
  edge.fold_height_um = {0, 0, 2, 0, 0};

  const DamageSummary seen = damage_summary(edge, start, 10);

  EXPECT_NEAR(seen.chips_per_mm, 2 / 0.02, 1e-9);
  EXPECT_EQ(seen.deepest_chip_um, 15);
  EXPECT_NEAR(seen.rolled_fraction, 0.2, 1e-15);
  EXPECT_NEAR(seen.recession_um, 41.0 / 5, 1e-12);
}

}  // namespace
}  // namespace keenfall::wear
