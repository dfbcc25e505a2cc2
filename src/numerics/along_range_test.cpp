#include "numerics/along_range.h"

#include <gtest/gtest.h>

namespace keenfall::numerics {
namespace {

TEST(AlongARange, IsEvenByRatioAboveZeroAndByDifferenceFromIt) {
  EXPECT_DOUBLE_EQ(along_range(1, 100, 0.5), 10);
  EXPECT_DOUBLE_EQ(along_range(0, 100, 0.5), 50);
  EXPECT_DOUBLE_EQ(along_range(3, 7, 0), 3);
  EXPECT_DOUBLE_EQ(along_range(3, 7, 1), 7);
  EXPECT_DOUBLE_EQ(along_range(5, 5, 0.3), 5);
}

}  // namespace
}  // namespace keenfall::numerics
