#include "workbench/plan_in_hand.h"

#include "planning/plan_flaws.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::workbench {
namespace {

using ::testing::ElementsAre;

trials::Plan two_media() {
  trials::Plan plan;
  for (const char* medium : {"sisal", "rope"}) {
    plan.cuttings.push_back(
        {.medium = {.name = medium}, .checkpoint_cuts = {0, 1, 3, 7, 15, 31, 63, 127}});
    for (const char* blade : {"A", "B"}) {
      plan.arms.push_back({.blade = blade, .cutting = plan.cuttings.size() - 1});
    }
  }
  return plan;
}

std::vector<std::string> columns_of(const base::ResultOrProblems<PlanInHand>& refused) {
  std::vector<std::string> columns;
  if (refused) return columns;
  for (const base::Problem& problem : refused.error()) columns.push_back(problem.place.column);
  return columns;
}

TEST(PlanInHand, AssumesTheUsualOfWhatIsNotSaid) {
  const auto in_hand = plan_in_hand({.plan = two_media(),
                                     .claims = {},
                                     .assumptions = {.half_keenness_cuts = {12, std::nullopt},
                                                     .run_log_sd = {std::nullopt, 0.35},
                                                     .shape = 0.6},
                                     .bench_times = {}},
                                    {});

  ASSERT_TRUE(in_hand) << in_words(in_hand.error().front());
  EXPECT_THAT(
      in_hand->assumptions.cuttings,
      ElementsAre(
          planning::ExpectedCutting{12, 0.6, 0.2},
          planning::ExpectedCutting{
              planning::usual_assumptions(two_media()).cuttings[1].half_keenness_cuts, 0.6, 0.35}));
  EXPECT_EQ(in_hand->worth_it_margin, 1.5);
  EXPECT_EQ(in_hand->kind.name, "thread_push");
}

TEST(PlanInHand, TakesTheMarginOfTheFirstClaimAndAKindOfOnesOwn) {
  trials::Plan plan = two_media();
  plan.reading.kind = "my_pull";
  const trials::Kit kit{.kinds = {{.name = "my_pull",
                                   .words = "pull of mine",
                                   .unit = "N",
                                   .resolution = {},
                                   .largest = {}}}};

  const auto in_hand = plan_in_hand({.plan = plan,
                                     .claims = {{"A outlasts B", 2}, {"by a lot", 3}},
                                     .assumptions = {},
                                     .bench_times = {}},
                                    kit);

  ASSERT_TRUE(in_hand);
  EXPECT_EQ(in_hand->worth_it_margin, 2);
  EXPECT_EQ(in_hand->kind.words, "pull of mine");
}

TEST(PlanInHand, NamesEveryFlawByTheFieldOfTheRequest) {
  trials::Plan plan = two_media();
  plan.cuttings[1].checkpoint_cuts = {1, 2, 3};
  plan.reading.kind = "smell";

  EXPECT_THAT(columns_of(plan_in_hand({.plan = plan,
                                       .claims = {},
                                       .assumptions = {.half_keenness_cuts = {30}, .shape = 9},
                                       .bench_times = {.hours_per_evening = 0}},
                                      {})),
              ElementsAre("plan.cuttings[1].checkpoint_cuts",
                          "plan.reading.kind",
                          "assumptions.shape",
                          "assumptions.shape",
                          "assumptions.half_keenness_cuts",
                          "bench_times.hours_per_evening"));
}

TEST(PlanInHand, MayHaveOneArmAlone) {
  trials::Plan plan = two_media();
  plan.cuttings.resize(1);
  plan.arms.resize(1);

  EXPECT_TRUE(plan_in_hand({.plan = plan, .claims = {}, .assumptions = {}, .bench_times = {}}, {}));
}

TEST(PlanInHand, DropsAnOrderThatIsNotThePlansAnyMore) {
  trials::Plan plan = *in_shuffled_order(two_media(), {});
  const auto kept =
      plan_in_hand({.plan = plan, .claims = {}, .assumptions = {}, .bench_times = {}}, {});
  plan.runs_each = 4;

  const auto dropped =
      plan_in_hand({.plan = plan, .claims = {}, .assumptions = {}, .bench_times = {}}, {});

  ASSERT_TRUE(kept && dropped);
  EXPECT_EQ(kept->plan.runs.size(), 24U);
  EXPECT_TRUE(dropped->plan.runs.empty());
}

TEST(InShuffledOrder, TakesPiecesOfTheKitInTurn) {
  const trials::Kit kit{.blades = {{.name = "A", .specimens = {{.name = "1"}, {.name = "2"}}}}};

  const auto plan = in_shuffled_order(two_media(), kit);

  ASSERT_TRUE(plan);
  for (const trials::PlannedRun& run : plan->runs) {
    const bool is_a = plan->arms[run.arm].blade == "A";
    EXPECT_EQ(run.specimen, is_a ? std::to_string(2 - run.block % 2) : "");
  }
}

TEST(InShuffledOrder, IsRefusedForNoArms) {
  EXPECT_EQ(in_shuffled_order({}, {}).error().place.column, "arms");
}

TEST(PlannedArms, AreCrossedOrBestAgainstBest) {
  const planning::ArmChoices choices{.blades = {"A", "B"},
                                     .edges = {{.finish = "fine"}, {.finish = "coarse"}}};

  EXPECT_EQ(planned_arms({.choices = choices, .crossed = true})->size(), 4U);
  EXPECT_EQ(planned_arms({.choices = choices, .crossed = false})->size(), 2U);
}

TEST(PlanOfOwnScatter, CanBeCutAsItIs) {
  const trials::Kit kit{.media = {{.name = "sisal", .condition = "dry"}}};

  const wire::MadePlan made = plan_of_own_scatter({.blade = "A", .medium = "sisal"}, kit);

  EXPECT_EQ(made.plan.cuttings[0].medium.condition, "dry");
  EXPECT_TRUE(planning::plan_flaws(
                  made.plan, std::vector{made.claim}, {}, planning::Purpose::own_repeatability)
                  .empty());
}

TEST(KitToPlanWith, IsEmptyWhereNoNotebookIsOpen) {
  EXPECT_EQ(kit_to_plan_with("").value(), trials::Kit{});
  EXPECT_EQ(kit_to_plan_with("/nowhere/there.keen").error().kind, base::ProblemKind::unreadable);
}

}  // namespace
}  // namespace keenfall::workbench
