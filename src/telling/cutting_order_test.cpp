#include "telling/cutting_order.h"

#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::telling {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

struct Cut {
  std::string block;
  std::optional<int> order;
};

verdicts::Judgement judgement_of(const std::vector<Cut>& runs) {
  verdicts::Judgement judgement;
  for (const Cut& run : runs) judgement.runs.push_back({.block = run.block, .order = run.order});
  return judgement;
}

TEST(CuttingOrder, IsTakenAsItIsWhereEveryRunHasItsOwn) {
  const CuttingOrder order = cutting_order(judgement_of({{"1", 4}, {"1", 1}, {"2", 9}}));

  EXPECT_THAT(order.places, ElementsAre(4, 1, 9));
  EXPECT_THAT(order.blocks, ElementsAre(BlockInOrder{"1", 1, 4}, BlockInOrder{"2", 9, 9}));
  EXPECT_EQ(order_words(order), "order of cutting");
}

TEST(CuttingOrder, FollowsBlockByBlockWhereItBeginsAnewEachDay) {
  const CuttingOrder order =
      cutting_order(judgement_of({{"mon", 2}, {"tue", 1}, {"mon", 1}, {"tue", 2}}));

  EXPECT_THAT(order.places, ElementsAre(2, 3, 1, 4));
  EXPECT_THAT(order.blocks, ElementsAre(BlockInOrder{"mon", 1, 2}, BlockInOrder{"tue", 3, 4}));
  EXPECT_EQ(order_words(order), "order of cutting, block after block");
}

TEST(CuttingOrder, HasNoBlocksWhereTheyWereMixedOrThereIsOneAlone) {
  EXPECT_THAT(cutting_order(judgement_of({{"1", 1}, {"2", 2}, {"1", 3}})).blocks, IsEmpty());
  EXPECT_THAT(cutting_order(judgement_of({{"", 1}, {"", 2}})).blocks, IsEmpty());
}

TEST(CuttingOrder, LeavesOutRunsWithoutOne) {
  const CuttingOrder order = cutting_order(judgement_of({{"1", 1}, {"1", std::nullopt}}));

  EXPECT_THAT(order.places, ElementsAre(1, std::nullopt));
  EXPECT_THAT(cutting_order({}).places, IsEmpty());
}

}  // namespace
}  // namespace keenfall::telling
