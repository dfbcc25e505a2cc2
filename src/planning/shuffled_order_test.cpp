#include "planning/shuffled_order.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <map>
#include <set>
#include <vector>

namespace keenfall::planning {
namespace {

trials::Plan plan_of(int arms, int runs_each, std::uint64_t seed = 1) {
  trials::Plan plan{.cuttings = {{}}, .runs_each = runs_each, .order_seed = {seed}};
  for (int a = 0; a < arms; ++a) {
    plan.arms.push_back({.blade = std::string(1, static_cast<char>('A' + a))});
  }
  return plan;
}

std::vector<std::size_t> arms_in_block(const std::vector<trials::PlannedRun>& runs, int block) {
  std::vector<std::size_t> arms;
  for (const auto& run : runs) {
    if (run.block == block) arms.push_back(run.arm);
  }
  return arms;
}

TEST(ShuffledOrder, HoldsEveryArmOnceInEveryBlock) {
  rc::check([] {
    const int arms = *rc::gen::inRange(1, 9);
    const int runs_each = *rc::gen::inRange(1, 12);
    const auto runs = shuffled_order(plan_of(arms, runs_each, *rc::gen::arbitrary<uint64_t>()), {});

    RC_ASSERT(runs.has_value());
    RC_ASSERT(runs->size() == static_cast<std::size_t>(arms * runs_each));
    for (int block = 1; block <= runs_each; ++block) {
      auto here = arms_in_block(*runs, block);
      std::ranges::sort(here);
      for (std::size_t a = 0; a < here.size(); ++a) RC_ASSERT(here[a] == a);
      RC_ASSERT(here.size() == static_cast<std::size_t>(arms));
    }
  });
}

TEST(ShuffledOrder, NumbersRunsOnThroughTheBlocks) {
  const auto runs = *shuffled_order(plan_of(4, 3), {});

  for (std::size_t i = 0; i < runs.size(); ++i) {
    EXPECT_EQ(runs[i].order, static_cast<int>(i) + 1);
    EXPECT_EQ(runs[i].block, static_cast<int>(i / 4) + 1);
  }
}

TEST(ShuffledOrder, IsTheSameForTheSameSeed) {
  EXPECT_EQ(*shuffled_order(plan_of(6, 6, 81), {}), *shuffled_order(plan_of(6, 6, 81), {}));
}

TEST(ShuffledOrder, DiffersBetweenSeedsAndBetweenBlocks) {
  const auto one = *shuffled_order(plan_of(6, 6, 81), {});
  const auto other = *shuffled_order(plan_of(6, 6, 82), {});

  EXPECT_NE(one, other);
  EXPECT_NE(arms_in_block(one, 1), arms_in_block(one, 2));
}

TEST(ShuffledOrder, KeepsItsBlocksWhenRunsAreAdded) {
  const auto three = *shuffled_order(plan_of(5, 3), {});
  const auto eight = *shuffled_order(plan_of(5, 8), {});

  EXPECT_TRUE(std::equal(three.begin(), three.end(), eight.begin()));
}

// 24 permutations of four arms in 24,000 blocks. Pearson's chi-square with 23 degrees of freedom
// exceeds 49.7 once in a thousand (tables of chi-square: 49.728).
TEST(ShuffledOrder, MakesEveryOrderEquallyLikely) {
  std::map<std::vector<std::size_t>, int> seen;
  for (std::uint64_t seed = 1; seed <= 24; ++seed) {
    const auto runs = *shuffled_order(plan_of(4, 1000, seed), {});
    for (std::size_t first = 0; first < runs.size(); first += 4) {
      ++seen[{runs[first].arm, runs[first + 1].arm, runs[first + 2].arm, runs[first + 3].arm}];
    }
  }

  ASSERT_EQ(seen.size(), 24U);
  double chi_square = 0;
  for (const auto& [order, count] : seen) chi_square += (count - 1000.0) * (count - 1000.0) / 1000;
  EXPECT_LT(chi_square, 49.7);
}

// The same of seeds that follow one another, first block only: a person counts seeds up.
TEST(ShuffledOrder, MakesEveryOrderEquallyLikelyOverNeighbouringSeeds) {
  std::map<std::vector<std::size_t>, int> seen;
  for (std::uint64_t seed = 0; seed < 6000; ++seed) {
    ++seen[arms_in_block(*shuffled_order(plan_of(3, 1, seed), {}), 1)];
  }

  ASSERT_EQ(seen.size(), 6U);
  double chi_square = 0;
  for (const auto& [order, count] : seen) chi_square += (count - 1000.0) * (count - 1000.0) / 1000;
  EXPECT_LT(chi_square, 20.5);  // 5 degrees of freedom, once in a thousand: 20.515
}

TEST(ShuffledOrder, TakesSpecimensInTurn) {
  const std::vector<trials::Blade> blades{{.name = "A", .specimens = {{.name = "A1"}, {"A2"}}},
                                          {.name = "B"}};

  const auto runs = *shuffled_order(plan_of(2, 4), blades);

  for (const auto& run : runs) {
    const std::string turn = run.block % 2 == 1 ? "A1" : "A2";
    EXPECT_EQ(run.specimen, run.arm == 0 ? turn : "");
  }
}

TEST(ShuffledOrder, HasTheHouseBladeInEveryBlock) {
  auto plan = plan_of(3, 5);
  plan.house_blade = "B";

  const auto runs = *shuffled_order(plan, {});

  std::set<int> blocks;
  for (const auto& run : runs) {
    if (plan.arms[run.arm].blade == "B") blocks.insert(run.block);
  }
  EXPECT_EQ(blocks.size(), 5U);
}

TEST(ShuffledOrder, RefusesAHouseBladeThatIsNoArm) {
  auto plan = plan_of(3, 5);
  plan.house_blade = "H";

  const auto runs = shuffled_order(plan, {});

  ASSERT_FALSE(runs);
  EXPECT_EQ(runs.error().sentence,
            "The house blade H is cut with in every block, but no arm has it.");
}

TEST(ShuffledOrder, RefusesAPlanWithoutArms) {
  const auto runs = shuffled_order(plan_of(0, 5), {});

  ASSERT_FALSE(runs);
  EXPECT_EQ(runs.error().sentence, "There is nothing to put in order: the plan has no arms yet.");
  EXPECT_EQ(runs.error().accepted, "one arm or more");
}

TEST(ShuffledOrder, RefusesRunsThatNobodyCuts) {
  EXPECT_EQ(shuffled_order(plan_of(2, 0), {}).error().sentence,
            "0 runs of each of 2 arms cannot be put in order.");
  EXPECT_FALSE(shuffled_order(plan_of(2, kMostRunsEach + 1), {}));
}

TEST(ShuffledOrder, RefusesMoreRunsInAllThanATrialCanHold) {
  const auto runs = shuffled_order(plan_of(200, 101), {});

  ASSERT_FALSE(runs);
  EXPECT_EQ(runs.error().sentence, "101 runs of each of 200 arms cannot be put in order.");
  EXPECT_EQ(runs.error().accepted, "1 to 1000 runs each, and at most 20000 in all");
}

}  // namespace
}  // namespace keenfall::planning
