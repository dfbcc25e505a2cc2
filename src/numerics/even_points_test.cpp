#include "numerics/even_points.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <vector>

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

// The example of Joe & Kuo's own program in three dimensions (from memory), less the origin.
TEST(EvenPoints, BeginAsSobolsSequenceDoes) {
  const std::vector<std::vector<double>> expected{{0.5, 0.5, 0.5},
                                                  {0.75, 0.25, 0.25},
                                                  {0.25, 0.75, 0.75},
                                                  {0.375, 0.375, 0.625},
                                                  {0.875, 0.875, 0.125},
                                                  {0.625, 0.125, 0.875}};
  EvenPoints points(3);

  for (const std::vector<double>& point : expected) {
    EXPECT_THAT(points.next(), ::testing::Pointwise(::testing::DoubleNear(1e-9), point));
  }
}

// 2^12 points less the origin: each of 64 slices of every coordinate holds 64 of them.
TEST(EvenPoints, FillEverySliceAlike) {
  constexpr std::size_t kDimension = 40;
  EvenPoints points(kDimension);
  std::vector<std::vector<int>> counts(kDimension, std::vector<int>(64));
  for (int i = 0; i < 4096; ++i) {
    const auto& at = points.next();
    for (std::size_t d = 0; d < kDimension; ++d) ++counts[d][static_cast<std::size_t>(64 * at[d])];
  }

  for (const auto& of_dimension : counts) {
    for (const int count : of_dimension) EXPECT_NEAR(count, 64, 1);
  }
}

TEST(EvenPoints, GoOnBeyondTheDimensionsOfTheSequence) {
  EvenPoints points(4000);
  EvenPoints again(4000);
  double sum = 0;
  for (int i = 0; i < 1000; ++i) sum += points.next()[3999];
  for (int i = 0; i < 999; ++i) (void)again.next();

  EXPECT_NEAR(sum / 1000, 0.5, 0.03);
  EXPECT_EQ(points.next()[3999], (again.next(), again.next()[3999]));
}

// A standard normal has variance 1 and fourth moment 3.
TEST(EvenPoints, AsNormalsHaveTheMomentsOfNormals) {
  EvenPoints points(4);
  std::vector<double> normals(3);
  double squares = 0;
  double fourths = 0;
  double products = 0;
  for (int i = 0; i < 20000; ++i) {
    as_normals(points.next(), normals);
    squares += normals[2] * normals[2];
    fourths += std::pow(normals[1], 4);
    products += normals[0] * normals[1];
  }

  EXPECT_NEAR(squares / 20000, 1, 0.01);
  EXPECT_NEAR(fourths / 20000, 3, 0.05);
  EXPECT_NEAR(products / 20000, 0, 0.01);
}

}  // namespace
}  // namespace keenfall::numerics
