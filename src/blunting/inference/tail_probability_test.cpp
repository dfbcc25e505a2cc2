#include "blunting/inference/tail_probability.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::blunting {
namespace {

// R 4.2: pnorm(c(-40, -5, 0.7), log.p = TRUE), pt(c(-40, -5, 0.7), 4, log.p = TRUE).
TEST(TailProbabilities, AgreeWithR) {
  EXPECT_NEAR(normal_log_tail(-40).log_probability, -804.6084420137538, 1e-8);
  EXPECT_NEAR(normal_log_tail(-5).log_probability, -15.0649983939887253, 1e-11);
  EXPECT_NEAR(normal_log_tail(0.7).log_probability, -0.2770239422771312, 1e-12);
  EXPECT_NEAR(student4_log_tail(-40).log_probability, -13.6610672112818801, 1e-10);
  EXPECT_NEAR(student4_log_tail(-5).log_probability, -5.5872757356166849, 1e-11);
  EXPECT_NEAR(student4_log_tail(0.7).log_probability, -0.3027958223386207, 1e-12);
}

TEST(TailProbabilities, CarryTheirOwnDerivative) {
  for (const double z : {-35.0, -8.0, -1.0, 0.0, 2.0}) {
    const double h = 1e-5;
    EXPECT_NEAR(
        (normal_log_tail(z + h).log_probability - normal_log_tail(z - h).log_probability) / (2 * h),
        normal_log_tail(z).derivative,
        1e-5);
    EXPECT_NEAR(
        (student4_log_tail(z + h).log_probability - student4_log_tail(z - h).log_probability) /
            (2 * h),
        student4_log_tail(z).derivative,
        1e-6);
  }
}

}  // namespace
}  // namespace keenfall::blunting
