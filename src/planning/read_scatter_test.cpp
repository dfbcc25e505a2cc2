#include "planning/read_scatter.h"

#include "planning/made_plan_test.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::planning {
namespace {

// Runs by 0.2, reading by 0.105: Fisher's information by base R's solve(), 7 readings of 9 % at 0
// to 127 cuts, spots 2.5 %, half keenness 20, shape 0.75, known beforehand to 0.06.
TEST(ReadScatter, IsThatOfRunsAndOfReadingTogether) {
  auto plan = testing::made_plan();
  plan.reading.repeats = 7;

  EXPECT_NEAR(*read_scatter(plan, testing::assumed(20), 0), std::hypot(0.2, 0.10497), 0.00005);
}

TEST(ReadScatter, IsBoundedWhereReadingsTellNothing) {
  auto plan = testing::made_plan();
  plan.cuttings[0].checkpoint_cuts = {0};

  EXPECT_NEAR(*read_scatter(plan, testing::assumed(), 0), std::hypot(0.2, 1), 1e-12);
}

TEST(ReadScatter, IsNotKnownOfWhatNothingIsAssumedOf) {
  auto unread = testing::made_plan();
  unread.reading.repeats = 0;

  EXPECT_FALSE(read_scatter(testing::made_plan(), {}, 0));
  EXPECT_FALSE(read_scatter(testing::made_plan(), testing::assumed(), 1));
  EXPECT_FALSE(read_scatter(testing::made_plan(), testing::assumed(-1), 0));
  EXPECT_FALSE(read_scatter(unread, testing::assumed(), 0));
}

TEST(ReadScatter, IsNotKnownOfACurveThatCannotBe) {
  auto without_shape = testing::assumed();
  without_shape.cuttings[0].shape = 0;

  EXPECT_FALSE(read_scatter(testing::made_plan(), without_shape, 0));
  EXPECT_FALSE(read_scatter(testing::made_plan(), testing::assumed(30, 0), 0));
}

}  // namespace
}  // namespace keenfall::planning
