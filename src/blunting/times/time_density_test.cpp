#include "blunting/times/time_density.h"

#include "blunting/inference/gradient_check.h"
#include "blunting/times/made_times.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace keenfall::blunting {
namespace {

using testing::made_times;

double worst_slope_of_times(const trials::Trial& trial) {
  const auto data = prepare_times(trial, {});
  TimeDensity density(*data);
  return testing::worst_gradient_error(density);
}

TEST(TimeDensity, HasTheGradientOfItsOwnValue) {
  EXPECT_LT(worst_slope_of_times(made_times({}, 3)), 1e-7);
}

TEST(TimeDensity, HasTheGradientOfItsOwnValueWithBlocksAndSpecimens) {
  EXPECT_LT(
      worst_slope_of_times(made_times({.runs_each = 6, .blocks = 3, .two_specimens = true}, 3)),
      1e-7);
}

TEST(TimeDensity, IsNoughtWhereAScatterIsBeyondAllNumbers) {
  const auto data = prepare_times(made_times({}, 3), {});
  TimeDensity density(*data);
  const std::vector<double> middle = density.start_for({1}, 0);
  for (const double far : {-800.0, 800.0}) {
    for (std::size_t i = 0; i < middle.size(); ++i) {
      std::vector<double> q = middle;
      q[i] = far;
      std::vector<double> gradient(q.size());
      EXPECT_FALSE(std::isnan(density(q, gradient))) << i;
    }
  }
}

}  // namespace
}  // namespace keenfall::blunting
