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

TEST(CuttingWords, AreTheMedia) {
  const std::vector<trials::PlannedCutting> cuttings{
      {.medium = {.name = "sisal", .condition = "dry"}}, {.medium = {.name = "rope"}}};

  EXPECT_THAT(words_of_cuttings(cuttings), ElementsAre("sisal", "rope"));
}

TEST(CuttingWords, SayMoreWhereOneMediumIsCutInTwoWays) {
  const std::vector<trials::PlannedCutting> cuttings{
      {.medium = {.name = "rope", .condition = "wet"}, .method = {.motion = trials::Motion::push}},
      {.medium = {.name = "rope"}, .method = {.motion = trials::Motion::slice}}};

  EXPECT_THAT(words_of_cuttings(cuttings), ElementsAre("rope, wet, push cut", "rope, slice"));
}

}  // namespace
}  // namespace keenfall::planning
