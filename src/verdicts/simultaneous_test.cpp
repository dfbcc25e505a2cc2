#include "verdicts/simultaneous.h"

#include "numerics/random.h"
#include "numerics/summaries.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::verdicts {
namespace {

std::vector<double> normal_draws(std::uint64_t stream, double mean, double sd) {
  numerics::RandomStream random({77}, stream);
  std::vector<double> draws;
  for (int i = 0; i < 40000; ++i) draws.push_back(mean + sd * random.normal());
  return draws;
}

TEST(SimultaneousBounds, OfOneComparisonAreItsOwnInterval) {
  const std::vector<std::vector<double>> one{normal_draws(1, 0.5, 0.2)};

  EXPECT_EQ(simultaneous_bounds(one)[0],
            bounds_of(numerics::exp_of(numerics::interval_of(one[0]))));
}

// Three independent normals: half-width z with (2 Phi(z) - 1)^3 = 0.95, z = 2.3877 (Šidák 1967);
// at 90 % z = 2.1140.
TEST(SimultaneousBounds, OfIndependentComparisonsWidenAsSidakSays) {
  const std::vector<std::vector<double>> three{
      normal_draws(1, 0, 0.1), normal_draws(2, 1, 0.3), normal_draws(3, -1, 0.2)};
  const auto bounds = simultaneous_bounds(three);

  EXPECT_NEAR(std::log(bounds[0].hi95) / 0.1, 2.3877, 0.06);
  EXPECT_NEAR((std::log(bounds[1].hi95) - 1) / 0.3, 2.3877, 0.06);
  EXPECT_NEAR((std::log(bounds[2].lo90) + 1) / 0.2, -2.1140, 0.05);
}

TEST(SimultaneousBounds, OfOneComparisonTwiceDoNotWiden) {
  const std::vector<double> draws = normal_draws(4, 0.2, 0.3);
  const std::vector<std::vector<double>> twice{draws, draws};

  EXPECT_NEAR(
      simultaneous_bounds(twice)[0].hi95, std::exp(numerics::interval_of(draws).hi95), 1e-4);
}

TEST(SimultaneousBounds, HoldTheWholeFamilyAsOftenAsTheySay) {
  std::vector<std::vector<double>> family(4, std::vector<double>(20000));
  numerics::RandomStream random({5}, 9);
  for (std::size_t d = 0; d < 20000; ++d) {
    const double shared = random.normal();
    for (auto& draws : family) draws[d] = 0.3 * shared + 0.2 * random.student_t(5);
  }
  const auto bounds = simultaneous_bounds(family);
  int inside = 0;
  for (std::size_t d = 0; d < 20000; ++d) {
    bool all = true;
    for (std::size_t c = 0; c < family.size(); ++c) {
      all = all && family[c][d] >= std::log(bounds[c].lo95) &&
            family[c][d] <= std::log(bounds[c].hi95);
    }
    inside += all ? 1 : 0;
  }

  EXPECT_NEAR(inside / 20000.0, 0.95, 0.002);
}

}  // namespace
}  // namespace keenfall::verdicts
