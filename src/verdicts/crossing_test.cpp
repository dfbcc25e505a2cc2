#include "verdicts/crossing.h"

#include <gtest/gtest.h>

namespace keenfall::verdicts {
namespace {

using Levels = std::vector<std::vector<std::size_t>>;

TEST(Crossing, KeepsAWholeTableWhole) {
  const auto table =
      largest_crossed_table({.level_counts = {3, 2},
                             .levels = {{0, 0}, {0, 1}, {1, 0}, {1, 1}, {2, 0}, {2, 1}},
                             .unknown = {std::nullopt, std::nullopt}});

  ASSERT_TRUE(table);
  EXPECT_EQ(table->levels, (Levels{{0, 1, 2}, {0, 1}}));
  EXPECT_EQ(table->cells.size(), 6U);
}

TEST(Crossing, LeavesOutWhatHasNoPartner) {
  const auto table = largest_crossed_table({.level_counts = {3, 2},
                                            .levels = {{0, 0}, {0, 1}, {1, 0}, {1, 1}, {2, 0}},
                                            .unknown = {std::nullopt, std::nullopt}});

  ASSERT_TRUE(table);
  EXPECT_EQ(table->levels, (Levels{{0, 1}, {0, 1}}));
  EXPECT_EQ(table->cells, (std::vector<std::size_t>{0, 1, 2, 3}));
}

// Eight cells either way: two blades, angles and finishes, or four blades and two angles.
TEST(Crossing, OfTwoAsLargeKeepsTheOneThatVariesMoreFactors) {
  const auto table = largest_crossed_table({.level_counts = {4, 2, 2},
                                            .levels = {{0, 0, 0},
                                                       {0, 0, 1},
                                                       {0, 1, 0},
                                                       {0, 1, 1},
                                                       {1, 0, 0},
                                                       {1, 0, 1},
                                                       {1, 1, 0},
                                                       {1, 1, 1},
                                                       {2, 0, 0},
                                                       {2, 1, 0},
                                                       {3, 0, 0},
                                                       {3, 1, 0}},
                                            .unknown = {std::nullopt, std::nullopt, std::nullopt}});

  ASSERT_TRUE(table);
  EXPECT_EQ(table->levels, (Levels{{0, 1}, {0, 1}, {0, 1}}));
}

TEST(Crossing, FindsNothingWhereEachBladeWasCutInAMediumOfItsOwn) {
  EXPECT_FALSE(largest_crossed_table({.level_counts = {2, 2},
                                      .levels = {{0, 0}, {1, 1}},
                                      .unknown = {std::nullopt, std::nullopt}}));
}

TEST(Crossing, DoesNotCompareAFinishWithOneNotRecorded) {
  EXPECT_FALSE(largest_crossed_table({.level_counts = {2, 2},
                                      .levels = {{0, 0}, {0, 1}, {1, 0}, {1, 1}},
                                      .unknown = {std::nullopt, 1}}));
}

TEST(Crossing, DropsTheEmptiestLevelsOfATableTooLargeToGoThrough) {
  Cells cells{.level_counts = {40, 3}, .unknown = {std::nullopt, std::nullopt}};
  for (std::size_t blade = 0; blade < 40; ++blade) {
    for (std::size_t medium = 0; medium < 3; ++medium) {
      if (blade != 7 || medium != 2) cells.levels.push_back({blade, medium});
    }
  }
  const auto table = largest_crossed_table(cells);

  ASSERT_TRUE(table);
  EXPECT_EQ(table->cells.size(), 39U * 3U);
}

}  // namespace
}  // namespace keenfall::verdicts
