#include "numerics/rank_correlation.h"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>
#include <vector>

namespace keenfall::numerics {
namespace {

TEST(RankCorrelation, RefusesWhatIsNoNumber) {
  const std::vector<double> a{1, 2, std::nan("")};

  EXPECT_THROW((void)rank_correlation(a, a), std::logic_error);
}

// By hand: ranks 0 1.5 1.5 3 4 and 1 0 2.5 2.5 4, so 7.25 / 9.5.
TEST(RankCorrelation, SharesRanksAmongTies) {
  const std::vector<double> a{1, 2, 2, 5, 9};
  const std::vector<double> b{3, 1, 4, 4, 8};

  EXPECT_NEAR(rank_correlation(a, b), 7.25 / 9.5, 1e-12);
  EXPECT_EQ(rank_correlation(a, std::vector<double>(5, 1.0)), 0);
}

}  // namespace
}  // namespace keenfall::numerics
