#include "planning/arm_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::planning {
namespace {

using ::testing::ElementsAre;

TEST(ArmWords, AreTheBladesWhereAllHaveOneEdge) {
  const std::vector<trials::PlannedArm> arms{{.blade = "A", .edge = {.finish = "9 um diamond"}},
                                             {.blade = "B", .edge = {.finish = "9 um diamond"}}};

  EXPECT_THAT(words_of_arms(arms), ElementsAre("A", "B"));
}

TEST(ArmWords, SayTheEdgesWhereTheyDiffer) {
  const std::vector<trials::PlannedArm> arms{
      {.blade = "A", .edge = {.bevel_angle = trials::PerSideAngle{17}}}, {.blade = "A"}};

  EXPECT_THAT(words_of_arms(arms), ElementsAre("A (17° per side)", "A (edge not said)"));
}

TEST(ArmWords, AreNoneOfNoArms) { EXPECT_TRUE(words_of_arms({}).empty()); }

}  // namespace
}  // namespace keenfall::planning
