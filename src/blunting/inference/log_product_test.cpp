#include "blunting/inference/log_product.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::blunting {
namespace {

TEST(TheLogOfAProduct, IsTheSumOfLogsFarBeyondWhatANumberHolds) {
  for (const double factor : {1e5, 1e-5, 1.25}) {
    LogProduct product;
    for (int i = 0; i < 1000; ++i) product.multiply(factor);
    EXPECT_NEAR(product.log(), 1000 * std::log(factor), 1e-6) << factor;
  }
}

TEST(TheLogOfAProduct, IsNoughtOfNone) { EXPECT_EQ(LogProduct().log(), 0); }

}  // namespace
}  // namespace keenfall::blunting
