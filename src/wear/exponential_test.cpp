#include "wear/exponential.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::wear {
namespace {

// The standard library's exp.
TEST(VectorExponential, AgreesWithTheStandardLibrary) {
  double worst = 0;
  for (int i = 0; i < 152000; ++i) {
    const double x = -699 + 0.00917 * i;
    worst = std::max(worst, std::abs(vector_exp(x) / std::exp(x) - 1));
  }

  EXPECT_LT(worst, 1e-14);
  EXPECT_EQ(vector_exp(0), 1);
}

TEST(VectorExponential, StaysFiniteBeyondItsRange) {
  EXPECT_GT(vector_exp(-1e6), 0);
  EXPECT_LT(vector_exp(-1e6), 1e-300);
  EXPECT_TRUE(std::isfinite(vector_exp(1e6)));
}

}  // namespace
}  // namespace keenfall::wear
