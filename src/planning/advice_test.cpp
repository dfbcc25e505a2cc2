#include "planning/advice.h"

#include "planning/made_plan_test.h"
#include "planning/shuffled_order.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace keenfall::planning {
namespace {

// A plan that nothing can be said against: many runs, shuffled, gated, with several pieces.
struct Sound {
  trials::Plan plan = testing::made_plan(2, 12);
  std::vector<trials::Claim> claims{{.words = "A outlasts B"}};
  trials::Kit kit = testing::made_kit();
  Assumptions assumptions = testing::assumed(20);

  Sound() {
    plan.reading.repeats = 7;
    plan.start_gate = trials::StartGate{.target_reading = 104};
    plan.stop.force_cap_newton = 60;
    for (trials::Blade& blade : kit.blades) blade.specimens = {{.name = "1"}, {.name = "2"}};
    plan.runs = *shuffled_order(plan, kit.blades);
  }

  [[nodiscard]] std::vector<Advice> advice() const {
    return advice_on(
        {.plan = plan, .claims = claims, .kit = kit, .assumptions = assumptions, .times = {}});
  }
};

bool says(const std::vector<Advice>& advice, const std::string& words) {
  return std::ranges::any_of(advice, [&words](const Advice& each) {
    return each.sentence.find(words) != std::string::npos;
  });
}

TEST(Advice, OnASoundPlanIsNone) { EXPECT_EQ(Sound().advice(), std::vector<Advice>{}); }

TEST(Advice, OnAnEmptyPlanIsNone) {
  const trials::Plan nothing;

  EXPECT_TRUE(advice_on({.plan = nothing, .claims = {}, .kit = {}, .assumptions = {}, .times = {}})
                  .empty());
}

TEST(Advice, SaysWhatOneArmIsGoodFor) {
  Sound one;
  one.plan = testing::made_plan(1, 3);

  ASSERT_FALSE(one.advice().empty());
  EXPECT_EQ(one.advice().front().field, "arms");
  EXPECT_TRUE(one.advice().front().sentence.starts_with("One arm compares nothing"));
}

// Runs scatter by 0.226, reading included; base R: exp(power.t.test(n = 3, sd = 0.226, power = 0.8,
// delta = NULL)$delta) is 2.002.
TEST(Advice, SaysWhatThreeRunsCanShow) {
  Sound plan;
  plan.plan.runs_each = 3;

  const auto advice = plan.advice();

  ASSERT_FALSE(advice.empty());
  EXPECT_EQ(advice[0].field, "runs_each");
  EXPECT_EQ(
      advice[0].sentence,
      "3 runs each can only show big differences: of edges that truly last 2 times as long as "
      "others four of five such trials say so, of smaller differences fewer.");
}

TEST(Advice, SaysThatTwoRunsOfACarelessHandProveNothing) {
  Sound plan;
  plan.plan.runs_each = 2;
  plan.assumptions.cuttings[0].run_log_sd = 0.5;

  EXPECT_TRUE(says(plan.advice(), "2 runs each prove nothing but a blow-out: plan 4 or more."));
}

// tests/reference/planning.R: at a log sd of 0.2 six runs each call equal edges the same
// within 1.25 in 19 of 100 trials, and 15 are needed; here runs scatter by 0.22 with their reading.
TEST(Advice, SaysWhenCallingEdgesTheSameIsOutOfReach) {
  Sound plan;
  plan.plan.runs_each = 6;
  plan.claims[0].worth_it_margin = 1.25;

  const auto advice = plan.advice();

  EXPECT_TRUE(says(advice,
                   "Practically the same within 1.25 is out of reach with 6 runs each: even of "
                   "edges that last equally long only about 1"));
  EXPECT_TRUE(says(advice, " in 100 such trials would say so. About 1"));
}

TEST(Advice, SaysThatBladeAndEdgeCannotBeToldApart) {
  Sound plan;
  plan.plan.arms[1].edge.finish = "FEPA-F 220";

  EXPECT_TRUE(says(plan.advice(), "A and B differ in their edges too: whichever lasts longer, "));
}

TEST(Advice, DoesNotSaySoOfACrossedPlan) {
  Sound plan;
  plan.plan.arms.push_back({.blade = "A", .edge = {.finish = "FEPA-F 220"}});
  plan.plan.arms.push_back({.blade = "B", .edge = {.finish = "FEPA-F 220"}});

  EXPECT_FALSE(says(plan.advice(), "differ in their edges"));
}

TEST(Advice, SaysThatOnePieceSpeaksOfThisBlade) {
  Sound plan;
  plan.kit.blades[1].specimens.clear();

  EXPECT_TRUE(says(plan.advice(), "the answer speaks of these blades, not of their steels"));
}

TEST(Advice, SaysToBeginWithTheWidestContrast) {
  Sound plan;
  plan.plan.arms.push_back({.blade = "C", .edge = plan.plan.arms[0].edge});

  EXPECT_TRUE(says(plan.advice(), "Begin with the two of the 3 arms that should differ most"));
}

TEST(Advice, SaysHowManyComparisonsManyArmsMake) {
  Sound plan;
  for (const char* blade : {"C", "D", "E"}) {
    plan.plan.arms.push_back({.blade = blade, .edge = plan.plan.arms[0].edge});
  }

  EXPECT_TRUE(says(plan.advice(), "5 arms make 10 comparisons"));
}

TEST(Advice, SaysToShuffle) {
  Sound plan;
  plan.plan.runs.clear();

  EXPECT_TRUE(says(plan.advice(), "The runs are in no order yet: shuffle them in blocks"));
}

TEST(Advice, SaysWhereCheckpointsMissHalfKeenness) {
  Sound plan;
  plan.assumptions.cuttings[0].half_keenness_cuts = 200;

  const auto advice = plan.advice();

  EXPECT_TRUE(says(advice, "Half keenness is expected at about 200 cuts; two checkpoints"));
  EXPECT_EQ(advice.back().field, "cuttings[0].checkpoint_cuts");
}

TEST(Advice, SaysThatThereIsNoGateNoStopAndNoLargestForce) {
  Sound plan;
  plan.plan.start_gate.reset();
  plan.plan.stop = {};

  const auto advice = plan.advice();

  EXPECT_TRUE(says(advice, "There is no start gate"));
  EXPECT_TRUE(says(advice, "Nothing stops a run before its last checkpoint"));
  EXPECT_TRUE(says(advice, "A blunt edge slips"));
}

TEST(Advice, SaysWhereReadingsAreTooFewOrTooMany) {
  Sound few;
  few.plan.reading.repeats = 1;
  Sound many;
  many.plan.reading.repeats = 25;

  EXPECT_TRUE(says(few.advice(), "With 1 reading at a checkpoint a slip cannot be told"));
  EXPECT_TRUE(says(many.advice(), "25 readings at a checkpoint tell hardly more than 7"));
}

TEST(Advice, SaysWhereABlockIsLongerThanAnEvening) {
  Sound plan;
  for (const char* blade : {"C", "D", "E", "F"}) {
    plan.plan.arms.push_back({.blade = blade, .edge = plan.plan.arms[0].edge});
  }

  EXPECT_TRUE(says(plan.advice(), "hours, more than an evening of 2.5 hours"));
}

TEST(Advice, NamesTheMediumWhereThereAreSeveral) {
  Sound plan;
  plan.plan.runs_each = 2;
  plan.plan.cuttings.push_back(plan.plan.cuttings[0]);
  plan.plan.cuttings[1].medium.name = "manila";
  for (const char* blade : {"A", "B"}) {
    plan.plan.arms.push_back({.blade = blade, .edge = plan.plan.arms[0].edge, .cutting = 1});
  }
  plan.assumptions.cuttings.push_back({.half_keenness_cuts = 20});

  EXPECT_TRUE(says(plan.advice(), "2 runs each can only show big differences in manila"));
}

TEST(Advice, CallsAMediumWithoutANameTheMedium) {
  Sound plan;
  plan.plan.runs_each = 2;
  plan.plan.cuttings.resize(2, plan.plan.cuttings[0]);
  plan.plan.cuttings[0].medium.name.clear();
  plan.assumptions.cuttings.resize(2, plan.assumptions.cuttings[0]);

  EXPECT_TRUE(says(plan.advice(), "2 runs each can only show big differences in the medium"));
}

// A run each settles nothing, which is a flaw and not advice (plan_flaws.h).
TEST(Advice, SaysNothingOfWhatOneRunCanShow) {
  Sound plan;
  for (const int runs_each : {0, 1}) {
    plan.plan.runs_each = runs_each;

    EXPECT_EQ(plan.advice(), std::vector<Advice>{}) << runs_each;
  }
}

TEST(Advice, SaysNothingOfWhatCannotBeWorkedOut) {
  Sound unassumed;
  unassumed.plan.runs_each = 2;
  unassumed.assumptions = {};
  Sound without_margin;
  without_margin.plan.runs_each = 6;
  without_margin.claims[0].worth_it_margin = 1;

  EXPECT_EQ(unassumed.advice(), std::vector<Advice>{});
  EXPECT_FALSE(says(without_margin.advice(), "out of reach"));
}

TEST(Advice, SaysNothingOfCheckpointsThatAreNotThereYet) {
  Sound plan;
  plan.plan.cuttings[0].checkpoint_cuts.clear();

  EXPECT_FALSE(says(plan.advice(), "Half keenness is expected"));
}

// A log sd of 2 is a factor of 7: two runs each do not even show a hundredfold.
TEST(Advice, SaysThatTwoRunsProveNothingWhereNoRatioWouldShow) {
  Sound plan;
  plan.plan.runs_each = 2;
  plan.assumptions.cuttings[0].run_log_sd = 2;

  EXPECT_TRUE(says(plan.advice(), "2 runs each prove nothing but a blow-out: plan 4 or more."));
}

// 60 runs each that scatter by 0.2 leave 1.66 * 0.2 * sqrt(2 / 60) = 0.061 either way (90 %, logs),
// more than log 1.05 = 0.049.
TEST(Advice, SaysThatNoNumberOfRunsWouldDoForANarrowMargin) {
  Sound plan;
  plan.claims[0].worth_it_margin = 1.05;

  EXPECT_TRUE(says(plan.advice(), "Practically the same within 1.05 is out of reach with 12 runs"));
  EXPECT_TRUE(says(plan.advice(), " would say so. More than 60 would be needed."));
}

// B with both edges: its two differ in the edge alone, and A and B with one edge in the blade
// alone.
TEST(Advice, TellsBladeFromEdgeWhereOneBladeHasBoth) {
  Sound plan;
  const trials::EdgePreparation other{.finish = "FEPA-F 220"};
  plan.plan.arms[1].edge = other;
  ASSERT_TRUE(says(plan.advice(), "A and B differ in their edges too"));

  plan.plan.arms.push_back({.blade = "B", .edge = plan.plan.arms[0].edge});

  EXPECT_FALSE(says(plan.advice(), "differ in their edges"));
}

TEST(Advice, TakesAStopReadingForAStop) {
  Sound plan;
  plan.plan.stop = {.reading = 416, .force_cap_newton = 60};

  EXPECT_FALSE(says(plan.advice(), "Nothing stops a run"));
}

TEST(Advice, CountsTheReadingsThatAreTooFew) {
  Sound plan;
  plan.plan.reading.repeats = 2;
  EXPECT_TRUE(says(plan.advice(), "With 2 readings at a checkpoint a slip cannot be told"));

  plan.plan.reading.repeats = 0;  // a flaw, not advice

  EXPECT_FALSE(says(plan.advice(), " at a checkpoint"));
}

}  // namespace
}  // namespace keenfall::planning
