#include "blunting/quick/scatter_group.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::blunting {
namespace {

// A start off by s moves log half keenness by lambda s, to which the run's own scatter is added:
// the covariance by the definition of both, in closed form.
TEST(PrecisionOfARun, IsTheInverseOfWhatItsStartAndItsOwnScatterMake) {
  const Hyperparameters at{.run = 0.3, .start = 0.07, .start_effect = -1.4};
  Eigen::Matrix2d covariance;
  covariance << 0.07 * 0.07, -1.4 * 0.07 * 0.07,  //
      -1.4 * 0.07 * 0.07, 1.4 * 1.4 * 0.07 * 0.07 + 0.3 * 0.3;

  const Eigen::Matrix2d product = run_precision(at) * covariance;

  EXPECT_TRUE(product.isApprox(Eigen::Matrix2d::Identity(), 1e-9)) << product;
}

}  // namespace
}  // namespace keenfall::blunting
