#include "telling/arm_groups.h"

#include "verdicts/made_judgement_test.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::telling {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using verdicts::Judgement;
using verdicts::testing::made_judgement;

std::vector<std::string> names_in(const Judgement& judgement) {
  std::vector<std::string> names;
  for (const ArmName& arm : names_of(judgement)) names.push_back(arm.name);
  return names;
}

std::vector<std::string> labels_in(const Judgement& judgement) {
  std::vector<std::string> labels;
  for (const ArmName& arm : names_of(judgement)) labels.push_back(arm.label);
  return labels;
}

TEST(ArmGroups, AreWhatWasCutInOneMediumWithTheLargestRatioFirst) {
  const std::vector<ArmGroup> groups = groups_of(made_judgement());

  ASSERT_EQ(groups.size(), 2U);
  EXPECT_EQ(groups[0].medium_words, "new matting");
  EXPECT_THAT(groups[0].arms, ElementsAre(0, 1, 2));
  EXPECT_THAT(groups[0].comparisons, ElementsAre(0, 1, 2));
  EXPECT_EQ(groups[1].medium_words, "uplifted matting");
  EXPECT_THAT(groups[1].comparisons, ElementsAre(5, 3, 4));
}

TEST(ArmGroups, AreTwoWhereOneMediumWasCutInTwoWays) {
  Judgement judgement = made_judgement();
  judgement.arms[2].arm.method.cut_length_mm = 60;

  const std::vector<ArmGroup> groups = groups_of(judgement);

  ASSERT_EQ(groups.size(), 3U);
  EXPECT_EQ(groups[1].medium_words, "new matting, " + in_words(judgement.arms[2].arm.method));
}

TEST(ArmGroups, AreNoneWithoutArms) { EXPECT_THAT(groups_of({}), IsEmpty()); }

TEST(ArmNames, AreTheBladesAndTheirOwnLabelsWhereTheyAreShort) {
  EXPECT_THAT(names_in(made_judgement()), ElementsAre("A", "B", "C", "A", "B", "C"));
  EXPECT_THAT(labels_in(made_judgement()), ElementsAre("A", "B", "C", "A", "B", "C"));
  EXPECT_FALSE(labels_need_a_key(names_of(made_judgement())));
}

TEST(ArmNames, AreCountedInCharactersNotInBytes) {
  Judgement judgement = made_judgement();
  for (const std::size_t arm : {0U, 3U}) judgement.arms[arm].arm.blade = "Ää";

  EXPECT_EQ(labels_in(judgement).front(), "Ää");
}

TEST(ArmNames, HaveTheSameNumberInEveryMediumWhereTheyAreLong) {
  Judgement judgement = made_judgement();
  for (auto& arm : judgement.arms) arm.arm.blade += " of the long knives";

  EXPECT_THAT(labels_in(judgement), ElementsAre("1", "2", "3", "1", "2", "3"));
  EXPECT_TRUE(labels_need_a_key(names_of(judgement)));
}

TEST(ArmNames, SayWhatTellsTheEdgesOfOneBladeApart) {
  Judgement judgement = made_judgement();
  judgement.arms[0].arm.blade = "C";
  judgement.arms[0].arm.edge.bevel_angle = trials::PerSideAngle{15};

  const std::vector<std::string> names = names_in(judgement);

  EXPECT_EQ(names[0], "C (15° per side)");
  EXPECT_EQ(names[2], "C (17° per side)");
}

TEST(ArmNames, SayTheWholeEdgeWhereWhatDiffersIsNotRecordedOfIt) {
  Judgement judgement = made_judgement();
  judgement.arms[0].arm.blade = "C";
  judgement.arms[0].arm.edge.apex_angle = trials::PerSideAngle{22};
  EXPECT_EQ(names_in(judgement)[2], "C (17° per side, 9 µm diamond)");

  judgement.arms[2].arm.edge = {};

  EXPECT_EQ(names_in(judgement)[2], "C (edge not recorded)");
}

TEST(ArmNames, MakeTheNameOfAPair) {
  const Judgement judgement = made_judgement();

  EXPECT_EQ(pair_name(judgement.comparisons.front(), names_of(judgement)), "C against A");
}

TEST(RemarksOnAll, AreThoseThatEveryPairOfTheMediumHas) {
  Judgement judgement = made_judgement();
  for (const std::size_t pair : {0U, 1U, 2U}) {
    judgement.comparisons[pair].remarks = {"They start differently."};
  }
  judgement.comparisons[0].remarks.push_back("Only here.");

  const std::vector<ArmGroup> groups = groups_of(judgement);

  EXPECT_THAT(remarks_on_all(judgement, groups[0]), ElementsAre("They start differently."));
  EXPECT_THAT(remarks_on_all(judgement, groups[1]), IsEmpty());
}

TEST(ArmNames, SayWhicheverPartOfTheEdgeTellsThemApart) {
  const auto names_with = [](auto change) {
    Judgement judgement = made_judgement();
    judgement.arms[0].arm.blade = "C";
    change(judgement.arms[0].arm.edge);
    return names_in(judgement);
  };

  const auto by_apex = names_with([](auto& edge) { edge.apex_angle = trials::PerSideAngle{22}; });
  const auto by_finish = names_with([](auto& edge) { edge.finish = "F400"; });
  const auto by_thickness = names_with([](auto& edge) { edge.thickness_behind_edge_mm = 0.4; });

  EXPECT_EQ(by_apex[0], "C (22° per side at the apex)");
  EXPECT_EQ(by_finish[0], "C (F400)");
  EXPECT_EQ(by_finish[2], "C (9 µm diamond)");
  EXPECT_EQ(by_thickness[0], "C (0.4 mm behind the edge)");
}

}  // namespace
}  // namespace keenfall::telling
