#include "blunting/inference/condensed_repeats.h"

#include "numerics/random.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::blunting {
namespace {

std::vector<std::vector<double>> noisy_checkpoints(int checkpoints, int repeats, double scatter) {
  numerics::RandomStream random({3}, 0);
  std::vector<std::vector<double>> groups;
  for (int g = 0; g < checkpoints; ++g) {
    std::vector<double> group;
    for (int j = 0; j < repeats; ++j) group.push_back(5 + 0.1 * g + scatter * random.normal());
    groups.push_back(group);
  }
  return groups;
}

TEST(Repeats, CondenseExactlyToMeansAndTheirScatter) {
  const CondensedRepeats found = condense_exactly(std::vector<std::vector<double>>{{1, 2, 3}, {4}});

  EXPECT_DOUBLE_EQ(found.checkpoints[0].centre, 2);
  EXPECT_DOUBLE_EQ(found.checkpoints[0].relative_variance, 1.0 / 3.0);
  EXPECT_DOUBLE_EQ(found.checkpoints[1].relative_variance, 1);
  EXPECT_DOUBLE_EQ(found.degrees_of_freedom, 2);
  EXPECT_DOUBLE_EQ(found.sum_of_squares, 2);
}

TEST(Repeats, CondensedRobustlyHaveTheScatterOfTheExactAnswerOnCleanReadings) {
  const auto groups = noisy_checkpoints(300, 7, 0.09);

  const double robust = condense_robustly(groups).sum_of_squares;
  const double exact = condense_exactly(groups).sum_of_squares;

  EXPECT_NEAR(std::sqrt(robust / exact), 1, 0.03);
}

TEST(Repeats, CondensedRobustlyHardlyMoveForOneSlipInSeven) {
  auto groups = noisy_checkpoints(40, 7, 0.09);
  const CondensedRepeats clean = condense_robustly(groups);
  groups[5][2] += 2;  // read off by a factor of seven
  const CondensedRepeats slipped = condense_robustly(groups);
  const CondensedRepeats naive = condense_exactly(groups);

  EXPECT_LT(std::abs(slipped.checkpoints[5].centre - clean.checkpoints[5].centre), 0.05);
  EXPECT_GT(std::abs(naive.checkpoints[5].centre - clean.checkpoints[5].centre), 0.25);
  EXPECT_GT(slipped.checkpoints[5].relative_variance, clean.checkpoints[5].relative_variance);
  EXPECT_NEAR(std::sqrt(slipped.sum_of_squares / clean.sum_of_squares), 1, 0.05);
}

TEST(Repeats, WithoutAnyScatterAreTheirMeans) {
  const std::vector<std::vector<double>> groups{{1, 1, 1}, {2}, {3, 3}};

  EXPECT_DOUBLE_EQ(condense_robustly(groups).checkpoints[2].centre, 3);
  EXPECT_DOUBLE_EQ(condense_robustly(groups).sum_of_squares, 0);
}

}  // namespace
}  // namespace keenfall::blunting
