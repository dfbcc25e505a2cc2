#include "numerics/even_points.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::numerics {
namespace {

// The integral of x y over the unit square is 1/4; random points would err by about 0.007 here.
TEST(EvenPoints, IntegrateASmoothFunctionCloserThanRandomOnes) {
  EvenPoints points(2);
  double sum = 0;
  for (int i = 0; i < 1000; ++i) {
    const auto& at = points.next();
    sum += at[0] * at[1];
  }

  EXPECT_NEAR(sum / 1000, 0.25, 0.001);
}

TEST(EvenPoints, StepByTheSquareRootsOfPrimes) {
  EvenPoints points(3);

  EXPECT_NEAR(points.next()[2], std::fmod(0.5 + std::sqrt(5.0), 1.0), 1e-12);
}

}  // namespace
}  // namespace keenfall::numerics
