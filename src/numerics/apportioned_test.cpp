#include "numerics/apportioned.h"

#include <gtest/gtest.h>

#include <numeric>
#include <vector>

namespace keenfall::numerics {
namespace {

TEST(Apportioned, SharesAddUpAndFollowTheWeights) {
  const std::vector<double> weights{0.5, 0.25, 0, 0.25};

  EXPECT_EQ(apportioned(weights, 8), (std::vector<std::size_t>{4, 2, 0, 2}));
}

TEST(Apportioned, GiveEverythingAwayWhereNothingComesOutEven) {
  const std::vector<double> weights(7, 0.1);
  const auto shares = apportioned(weights, 100);

  EXPECT_EQ(std::accumulate(shares.begin(), shares.end(), std::size_t{0}), 100U);
  for (const std::size_t share : shares) EXPECT_NEAR(static_cast<double>(share), 100.0 / 7, 1);
}

}  // namespace
}  // namespace keenfall::numerics
