#include "numerics/random.h"

#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <stdexcept>

namespace keenfall::numerics {
namespace {

TEST(RandomStreams, RepeatThemselvesForTheSameSeedAndStream) {
  RandomStream one({42}, 3);
  RandomStream again({42}, 3);

  for (int i = 0; i < 100; ++i) EXPECT_EQ(one.normal(), again.normal());
}

TEST(RandomStreams, DifferForNeighbouringSeedsAndStreams) {
  std::set<double> firsts;
  for (std::uint64_t seed = 0; seed < 30; ++seed) {
    for (std::uint64_t stream = 0; stream < 30; ++stream) {
      firsts.insert(RandomStream({seed}, stream).uniform());
    }
  }

  EXPECT_EQ(firsts.size(), 900U);
}

// Moments of the standard normal and of Student's t with 5 degrees of freedom (variance 5/3).
// Bounds are five standard errors of 200,000 draws.
TEST(RandomStreams, HaveTheMomentsOfTheirDistributions) {
  RandomStream random({7}, 0);
  const int draws = 200000;
  double sum = 0;
  double squares = 0;
  double t_squares = 0;
  double exponential = 0;
  for (int i = 0; i < draws; ++i) {
    const double z = random.normal();
    sum += z;
    squares += z * z;
    const double t = random.student_t(5);
    t_squares += t * t;
    exponential += random.exponential();
  }

  EXPECT_NEAR(sum / draws, 0, 5 / std::sqrt(draws));
  EXPECT_NEAR(squares / draws, 1, 5 * std::sqrt(2.0 / draws));
  EXPECT_NEAR(t_squares / draws, 5.0 / 3.0, 5 * std::sqrt(22.2 / draws));
  EXPECT_NEAR(exponential / draws, 1, 5 / std::sqrt(draws));
}

TEST(RandomStreams, ChooseBelowABoundEvenly) {
  RandomStream random({9}, 0);
  std::array<int, 3> counts{};
  for (int i = 0; i < 30000; ++i) ++counts.at(random.below(3));

  for (const int count : counts) EXPECT_NEAR(count, 10000, 5 * std::sqrt(30000 * 2.0 / 9));
  EXPECT_THROW((void)random.below(0), std::logic_error);
}

}  // namespace
}  // namespace keenfall::numerics
