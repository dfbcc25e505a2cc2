#include "planning/suggested_checkpoints.h"

#include "planning/checkpoints.h"

#include <gtest/gtest.h>

namespace keenfall::planning {
namespace {

// Common practice, no source.
TEST(SuggestedCheckpoints, WhereNothingIsKnownAreThoseOfPractice) {
  const auto clean = suggested_checkpoints({});
  const auto gritty = suggested_checkpoints({.gritty = true});

  EXPECT_EQ(clean->cuts, doubling_checkpoints());
  EXPECT_EQ(gritty->cuts, gritty_checkpoints());
  EXPECT_NE(clean->why.find("double and add one"), std::string::npos);
  EXPECT_NE(gritty->why.find("carries grit"), std::string::npos);
}

TEST(SuggestedCheckpoints, AroundAHalfKeennessAreTheFewest) {
  const auto suggested = suggested_checkpoints({.half_keenness_cuts = 40});

  EXPECT_EQ(suggested->cuts, *fewest_checkpoints({.half_keenness_cuts = 40}));
  EXPECT_EQ(
      suggested->why,
      "Checkpoints grow by a factor: an edge loses most at first and then ever more slowly, so "
      "even steps would spend most readings where little happens. These are the fewest with "
      "two either side of half keenness wherever it lies between half and twice the 40 "
      "expected.");
}

// tau (m - 1)^(1/p) = 40 * 7^(1/0.75) = 536 cuts.
TEST(SuggestedCheckpoints, GoOnToTheStopLevel) {
  EXPECT_GE(suggested_checkpoints({.half_keenness_cuts = 40, .stop_level = 8})->cuts.back(), 500);
  EXPECT_LT(suggested_checkpoints({.half_keenness_cuts = 40})->cuts.back(), 500);
}

TEST(SuggestedCheckpoints, InGrittyStockAreNoMoreThanInClean) {
  EXPECT_LE(suggested_checkpoints({.half_keenness_cuts = 40, .gritty = true})->cuts.size(),
            suggested_checkpoints({.half_keenness_cuts = 40})->cuts.size());
}

TEST(SuggestedCheckpoints, AreRefusedAroundNoHalfKeenness) {
  EXPECT_EQ(suggested_checkpoints({.half_keenness_cuts = -3}).error().sentence,
            "Checkpoints cannot be laid around a half keenness of -3.");
}

}  // namespace
}  // namespace keenfall::planning
