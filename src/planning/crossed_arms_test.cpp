#include "planning/crossed_arms.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace keenfall::planning {
namespace {

trials::EdgePreparation edge_of(double angle_deg, const std::string& finish = "9 um diamond") {
  return {.bevel_angle = trials::PerSideAngle{angle_deg}, .finish = finish};
}

TEST(CrossedArms, HoldEveryBladeWithEveryEdgeInEveryCuttingOnce) {
  const auto arms =
      crossed_arms({.blades = {"A", "B", "C"}, .edges = {edge_of(17), edge_of(20)}, .cuttings = 2});

  ASSERT_TRUE(arms);
  EXPECT_EQ(arms->size(), 12U);
  std::set<std::tuple<std::size_t, std::string, double>> distinct;
  for (const auto& arm : *arms) {
    distinct.insert({arm.cutting, arm.blade, arm.edge.bevel_angle->deg});
  }
  EXPECT_EQ(distinct.size(), 12U);
  EXPECT_EQ((*arms)[1], (trials::PlannedArm{.blade = "A", .edge = edge_of(20), .cutting = 0}));
  EXPECT_EQ((*arms)[6], (trials::PlannedArm{.blade = "A", .edge = edge_of(17), .cutting = 1}));
}

TEST(CrossedArms, OfOneBladeWithOneEdgeAreOne) {
  const auto arms = crossed_arms({.blades = {"A"}, .edges = {{}}});

  ASSERT_TRUE(arms);
  EXPECT_EQ(*arms, std::vector<trials::PlannedArm>{{.blade = "A"}});
}

TEST(CrossedArms, NeedABlade) {
  const auto arms = crossed_arms({.edges = {edge_of(17)}});

  ASSERT_FALSE(arms);
  EXPECT_EQ(in_words(arms.error()),
            "column blades: There is no blade to compare yet. Accepted: one blade or more.");
}

TEST(CrossedArms, RefuseABladeChosenTwice) {
  const auto arms = crossed_arms({.blades = {"A", "B", "A"}, .edges = {edge_of(17)}});

  ASSERT_FALSE(arms);
  EXPECT_EQ(arms.error().sentence, "The blade A is chosen twice; an arm is cut with once a block.");
  EXPECT_EQ(arms.error().place.column, "blades");
}

TEST(CrossedArms, RefuseAnEdgeChosenTwice) {
  const auto arms = crossed_arms({.blades = {"A"}, .edges = {edge_of(17), edge_of(17)}});

  ASSERT_FALSE(arms);
  EXPECT_EQ(
      arms.error().sentence,
      "The edge 17° per side, 9 um diamond is chosen twice; an arm is cut with once a block.");
}

TEST(CrossedArms, RefuseMoreThanATrialCanHold) {
  const auto arms =
      crossed_arms({.blades = {"A", "B"}, .edges = {edge_of(17)}, .cuttings = kMostArms});

  ASSERT_FALSE(arms);
  EXPECT_EQ(arms.error().kind, base::ProblemKind::too_large);
  EXPECT_EQ(arms.error().accepted, "200 arms or fewer");
}

TEST(CrossedArms, RefuseAProductThatIsTooLargeOfFactorsThatAreNot) {
  const auto arms = crossed_arms(
      {.blades = {"A", "B", "C"}, .edges = {edge_of(17), edge_of(20)}, .cuttings = kMostArms / 4});

  ASSERT_FALSE(arms);
  EXPECT_EQ(arms.error().kind, base::ProblemKind::too_large);
}

TEST(CrossedArms, NeedAMedium) {
  const auto arms = crossed_arms({.blades = {"A"}, .edges = {edge_of(17)}, .cuttings = 0});

  ASSERT_FALSE(arms);
  EXPECT_EQ(in_words(arms.error()),
            "column cuttings: There is no medium to compare yet. Accepted: one medium or more.");
}

TEST(CrossedArms, CallAnEdgeOfWhichNothingIsSaidSo) {
  const auto arms = crossed_arms({.blades = {"A"}, .edges = {{}, {}}});

  ASSERT_FALSE(arms);
  EXPECT_EQ(arms.error().sentence,
            "An edge of which nothing is said is chosen twice; an arm is cut with once a block.");
}

TEST(BestAgainstBest, GivesEachBladeItsOwnEdge) {
  const auto arms =
      best_against_best({.blades = {"A", "B"}, .edges = {edge_of(12), edge_of(20)}, .cuttings = 2});

  ASSERT_TRUE(arms);
  EXPECT_EQ(*arms,
            (std::vector<trials::PlannedArm>{{.blade = "A", .edge = edge_of(12), .cutting = 0},
                                             {.blade = "B", .edge = edge_of(20), .cutting = 0},
                                             {.blade = "A", .edge = edge_of(12), .cutting = 1},
                                             {.blade = "B", .edge = edge_of(20), .cutting = 1}}));
}

TEST(BestAgainstBest, MayGiveTwoBladesTheSameEdge) {
  EXPECT_TRUE(best_against_best({.blades = {"A", "B"}, .edges = {edge_of(15), edge_of(15)}}));
}

TEST(BestAgainstBest, NeedsOneEdgeForEachBlade) {
  const auto arms = best_against_best({.blades = {"A", "B"}, .edges = {edge_of(12)}});

  ASSERT_FALSE(arms);
  EXPECT_EQ(arms.error().sentence,
            "Best against best gives every blade its own edge; here stand 2 blades and 1 edge.");
  EXPECT_EQ(arms.error().accepted, "one edge for each blade, in the order of the blades");
}

TEST(BestAgainstBest, NeedsABlade) {
  EXPECT_EQ(best_against_best({.edges = {edge_of(12)}}).error().sentence,
            "There is no blade to compare yet.");
}

TEST(BestAgainstBest, RefusesMoreThanATrialCanHold) {
  const auto arms_in = [](std::size_t cuttings) {
    return best_against_best(
        {.blades = {"A", "B"}, .edges = {edge_of(12), edge_of(20)}, .cuttings = cuttings});
  };

  EXPECT_EQ(arms_in(kMostArms + 1).error().kind, base::ProblemKind::too_large);
  EXPECT_EQ(arms_in(101).error().sentence,
            "That would be 202 arms, each cut once in every block: more than a trial can hold.");
  EXPECT_EQ(arms_in(100)->size(), kMostArms);
}

TEST(CrossedEdges, HoldEveryAngleWithEveryFinish) {
  const auto edges = crossed_edges({.bevel_angles = {{15}, {20}},
                                    .finishes = {"9 um diamond", "3 um diamond", "FEPA-F 220"},
                                    .thickness_behind_edge_mm = 0.4});

  ASSERT_TRUE(edges);
  ASSERT_EQ(edges->size(), 6U);
  EXPECT_EQ((*edges)[1],
            (trials::EdgePreparation{.bevel_angle = trials::PerSideAngle{15},
                                     .finish = "3 um diamond",
                                     .thickness_behind_edge_mm = 0.4}));
}

TEST(CrossedEdges, OfNoChoicesAreOneEdgeOfWhichNothingIsSaid) {
  EXPECT_EQ(crossed_edges({}).value(), std::vector<trials::EdgePreparation>{{}});
}

TEST(CrossedEdges, AreRefusedBeforeThereAreMoreThanFitATrial) {
  const std::vector<trials::PerSideAngle> many(100'000, {15});
  const auto edges = crossed_edges({.bevel_angles = many, .apex_angles = many});

  ASSERT_FALSE(edges);
  EXPECT_EQ(edges.error().kind, base::ProblemKind::too_large);
  EXPECT_EQ(edges.error().place.column, "edge_choices");
}

}  // namespace
}  // namespace keenfall::planning
