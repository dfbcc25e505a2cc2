#include "planning/plan_flaws.h"

#include "planning/crossed_arms.h"
#include "planning/made_plan_test.h"
#include "planning/shuffled_order.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace keenfall::planning {
namespace {

const std::vector<trials::Claim> kClaims{{.words = "A outlasts B in sisal"}};

std::vector<base::Problem> flaws_of(const trials::Plan& plan) {
  return plan_flaws(plan, kClaims, testing::made_kit(5));
}

// The only flaw of a plan that was sound before `spoil`.
template <class Spoil>
base::Problem flaw_of(Spoil spoil) {
  auto plan = testing::made_plan();
  spoil(plan);
  const auto flaws = flaws_of(plan);
  EXPECT_EQ(flaws.size(), 1U);
  return flaws.empty() ? base::Problem{} : flaws.front();
}

TEST(PlanFlaws, ASoundPlanHasNone) {
  auto plan = testing::made_plan();
  plan.runs = *shuffled_order(plan, {});
  plan.looks = {2, 4};
  plan.house_blade = "A";
  plan.start_gate = trials::StartGate{.target_reading = 104};

  EXPECT_TRUE(flaws_of(plan).empty());
}

TEST(PlanFlaws, AnEmptyPlanLacksAClaimAMediumAndArms) {
  const auto flaws = plan_flaws({}, {}, {});

  ASSERT_EQ(flaws.size(), 3U);
  EXPECT_EQ(flaws[0].sentence,
            "Nothing is claimed yet: say first what you expect, so that it could fail.");
  EXPECT_EQ(flaws[1].place.column, "cuttings");
  EXPECT_EQ(flaws[2].sentence, "The plan compares nothing yet: it has no arm.");
}

TEST(PlanFlaws, OneArmComparesNothing) {
  const auto flaw = plan_flaws(testing::made_plan(1), kClaims, testing::made_kit());

  ASSERT_EQ(flaw.size(), 1U);
  EXPECT_EQ(flaw[0].sentence, "The plan has one arm only, so there is nothing to compare it with.");
  EXPECT_EQ(flaw[0].place.column, "arms");
}

TEST(PlanFlaws, OneArmIsEnoughForOnesOwnRepeatability) {
  EXPECT_TRUE(
      plan_flaws(testing::made_plan(1), kClaims, testing::made_kit(), Purpose::own_repeatability)
          .empty());
}

TEST(PlanFlaws, AnArmAloneInItsMediumIsNamedWithTheMedium) {
  const auto flaw = flaw_of([](trials::Plan& plan) {
    plan.cuttings.push_back(plan.cuttings[0]);
    plan.cuttings[1].medium.name = "manila";
    plan.arms.push_back({.blade = "A", .cutting = 1});
  });

  EXPECT_EQ(flaw.sentence, "One arm only is cut in manila; blades are compared within one medium.");
  EXPECT_EQ(flaw.place.column, "cuttings[1]");
}

TEST(PlanFlaws, TooManyArmsAreTooLarge) {
  auto plan = testing::made_plan();
  plan.arms.clear();
  for (std::size_t a = 0; a <= kMostArms; ++a) plan.arms.push_back({.blade = std::to_string(a)});

  const auto flaws = plan_flaws(plan, kClaims, {});

  ASSERT_EQ(flaws.size(), 1U);
  EXPECT_EQ(flaws[0].kind, base::ProblemKind::too_large);
}

TEST(PlanFlaws, AnArmTwiceIsAConflict) {
  const auto flaw = flaw_of([](trials::Plan& plan) { plan.arms.push_back(plan.arms[0]); });

  EXPECT_EQ(flaw.sentence, "The blade A stands twice in the plan with the same edge and medium.");
  EXPECT_EQ(flaw.place.column, "arms[2]");
}

TEST(PlanFlaws, AnArmOfNoMediumIsNamed) {
  const auto flaw =
      flaw_of([](trials::Plan& plan) { plan.arms.push_back({.blade = "C", .cutting = 7}); });

  EXPECT_EQ(flaw.sentence, "An arm points at a medium that the plan does not have.");
  EXPECT_EQ(flaw.place.found, "7");
}

TEST(PlanFlaws, ABladeThatIsNotInTheKitIsNamedOnce) {
  auto plan = testing::made_plan(2);
  plan.arms[1].blade = "Z";
  plan.arms.push_back({.blade = "Z"});

  const auto flaws = flaws_of(plan);

  ASSERT_EQ(flaws.size(), 1U);
  EXPECT_EQ(flaws[0].sentence, "The blade Z is not in the kit.");
  EXPECT_EQ(flaws[0].kind, base::ProblemKind::unknown_name);
  EXPECT_EQ(flaws[0].accepted, "a blade of the kit; or enter this one there");
}

TEST(PlanFlaws, AKitWithoutBladesAsksAfterNone) {
  EXPECT_TRUE(plan_flaws(testing::made_plan(), kClaims, {}).empty());
}

TEST(PlanFlaws, AnArmNeedsABlade) {
  EXPECT_EQ(flaw_of([](trials::Plan& plan) { plan.arms[0].blade.clear(); }).sentence,
            "An arm has no blade.");
}

TEST(PlanFlaws, AMediumNeedsAName) {
  EXPECT_EQ(flaw_of([](trials::Plan& plan) { plan.cuttings[0].medium.name.clear(); }).place.column,
            "cuttings[0].medium");
}

TEST(PlanFlaws, CheckpointsMustRise) {
  const auto flaw = flaw_of([](trials::Plan& plan) {
    plan.cuttings[0].checkpoint_cuts = {0, 1, 7, 7, 15};
  });

  EXPECT_EQ(
      in_words(flaw),
      "column cuttings[0].checkpoint_cuts: Checkpoints must rise. Accepted: numbers that rise "
      "from 0, such as 0 1 3 7 15 31 63 127.");
  EXPECT_EQ(flaw.place.found, "0 1 7 7 15");
}

TEST(PlanFlaws, CheckpointsBeginAtTheStart) {
  EXPECT_EQ(flaw_of([](trials::Plan& plan) {
              plan.cuttings[0].checkpoint_cuts = {1, 3, 7};
            }).sentence,
            "The first checkpoint is the start, before any cut; here it is 1.");
}

TEST(PlanFlaws, TwoCheckpointsAreNoCurve) {
  EXPECT_EQ(flaw_of([](trials::Plan& plan) {
              plan.cuttings[0].checkpoint_cuts = {0, 3};
            }).sentence,
            "A blunting curve needs readings at three checkpoints at least: the start and two "
            "more.");
}

TEST(PlanFlaws, CheckpointsAreNumbers) {
  EXPECT_EQ(flaw_of([](trials::Plan& plan) {
              plan.cuttings[0].checkpoint_cuts = {0, 3, NAN};
            }).sentence,
            "Checkpoints must rise.");
}

TEST(PlanFlaws, OneRunEachSettlesNothing) {
  const auto flaw = flaw_of([](trials::Plan& plan) { plan.runs_each = 1; });

  EXPECT_EQ(flaw.sentence,
            "With one run each nobody knows how much runs scatter, so nothing can be settled.");
  EXPECT_EQ(flaw.place.column, "runs_each");
}

TEST(PlanFlaws, NoRunsCannotBeCut) {
  EXPECT_EQ(flaw_of([](trials::Plan& plan) { plan.runs_each = -3; }).sentence,
            "-3 runs of each arm cannot be cut.");
}

TEST(PlanFlaws, LooksMustRise) {
  const auto flaw = flaw_of([](trials::Plan& plan) { plan.looks = {3, 2}; });

  EXPECT_EQ(flaw.sentence,
            "Looks are numbers of runs of every arm; they must rise, from at least 2.");
  EXPECT_EQ(flaw.place.found, "3 2");
}

TEST(PlanFlaws, LooksEndWithTheRuns) {
  EXPECT_EQ(flaw_of([](trials::Plan& plan) {
              plan.looks = {3, 6};
            }).sentence,
            "The last look is after 6 runs each, and only 4 are planned.");
}

TEST(PlanFlaws, AMarginIsARatioAboveOne) {
  const std::vector<trials::Claim> claims{{.words = "A outlasts B", .worth_it_margin = 1}};

  const auto flaws = plan_flaws(testing::made_plan(), claims, {});

  ASSERT_EQ(flaws.size(), 1U);
  EXPECT_EQ(
      flaws[0].sentence,
      "The worth-it margin is the ratio of lasting below which you would not act; 1 is none.");
  EXPECT_EQ(flaws[0].place.column, "claims[0].worth_it_margin");
}

TEST(PlanFlaws, AClaimHasWords) {
  const std::vector<trials::Claim> claims{{.words = "A outlasts B"}, {}};

  const auto flaws = plan_flaws(testing::made_plan(), claims, {});

  ASSERT_EQ(flaws.size(), 1U);
  EXPECT_EQ(flaws[0].place.column, "claims[1].words");
}

TEST(PlanFlaws, AStopIsALevelOrAReading) {
  EXPECT_EQ(flaw_of([](trials::Plan& plan) { plan.stop = {.level = 4, .reading = 400}; }).sentence,
            "A run stops at a level or at a reading; the plan has both.");
}

TEST(PlanFlaws, AStopMustBeBeyondTheStart) {
  EXPECT_EQ(flaw_of([](trials::Plan& plan) { plan.stop = {.level = 1}; }).place.column,
            "stop.level");
  EXPECT_EQ(flaw_of([](trials::Plan& plan) { plan.stop = {.reading = -5}; }).place.column,
            "stop.reading");
  EXPECT_EQ(flaw_of([](trials::Plan& plan) { plan.stop.force_cap_newton = 0; }).place.column,
            "stop.force_cap_newton");
}

TEST(PlanFlaws, AReadingIsOfAKindThatIsKnown) {
  const auto flaw = flaw_of([](trials::Plan& plan) { plan.reading.kind = "tomato"; });

  EXPECT_EQ(flaw.sentence, "Nobody knows a kind of reading called tomato.");
  EXPECT_EQ(flaw.place.column, "reading.kind");
}

TEST(PlanFlaws, AReadingMayBeOfOnesOwnKind) {
  auto plan = testing::made_plan();
  plan.reading.kind = "tomato";
  auto kit = testing::made_kit();
  kit.kinds.push_back({.name = "tomato", .words = "tomato bite", .unit = "mm"});

  EXPECT_TRUE(plan_flaws(plan, kClaims, kit).empty());
  EXPECT_EQ(kind_read(plan, kit)->words, "tomato bite");
  EXPECT_EQ(kind_read(plan, {}), nullptr);
}

TEST(PlanFlaws, EvidenceHasNoCurve) {
  EXPECT_EQ(flaw_of([](trials::Plan& plan) { plan.reading.kind = "glint"; }).kind,
            base::ProblemKind::unsuitable_data);
}

TEST(PlanFlaws, ACheckpointIsReadOnceAtLeast) {
  EXPECT_EQ(flaw_of([](trials::Plan& plan) { plan.reading.repeats = 0; }).sentence,
            "A checkpoint cannot be read 0 times.");
}

TEST(PlanFlaws, AStartGateCanBePassed) {
  EXPECT_EQ(flaw_of([](trials::Plan& plan) { plan.start_gate = trials::StartGate{}; }).place.column,
            "start_gate");
}

TEST(PlanFlaws, AHouseBladeIsAnArm) {
  EXPECT_EQ(flaw_of([](trials::Plan& plan) { plan.house_blade = "E"; }).sentence,
            "The house blade E is cut with in every block, but no arm has it.");
}

TEST(PlanFlaws, NobodyCutsABillionTimes) {
  const auto cut_to = [](double last) {
    return flaw_of([last](trials::Plan& plan) { plan.cuttings[0].checkpoint_cuts = {0, 3, last}; });
  };

  EXPECT_EQ(cut_to(2e9).sentence,
            "The last checkpoint lies beyond a billion cuts, further than any edge is cut.");
  EXPECT_EQ(cut_to(2e9).place.column, "cuttings[0].checkpoint_cuts");
  EXPECT_EQ(cut_to(INFINITY).kind, base::ProblemKind::bad_value);
}

TEST(PlanFlaws, AMarginIsAHundredAtMost) {
  const std::vector<trials::Claim> claims{{.words = "A outlasts B", .worth_it_margin = 101},
                                          {.words = "B outlasts A", .worth_it_margin = 100}};

  const auto flaws = plan_flaws(testing::made_plan(), claims, {});

  ASSERT_EQ(flaws.size(), 1U);
  EXPECT_EQ(flaws[0].place.column, "claims[0].worth_it_margin");
  EXPECT_EQ(flaws[0].accepted, "a ratio above 1, up to 100; 1.5 is usual");
}

TEST(PlanFlaws, AMediumWithoutArmsIsNamedOrCalledOneOfThePlan) {
  auto plan = testing::made_plan();
  plan.cuttings.resize(2, plan.cuttings[0]);
  plan.cuttings[1].medium.name = "manila";
  EXPECT_EQ(flaws_of(plan).front().sentence,
            "Nothing is compared in manila; blades are compared within one medium.");

  plan.cuttings[1].medium.name.clear();

  EXPECT_EQ(flaws_of(plan).back().sentence,
            "Nothing is compared in a medium of the plan; blades are compared within one medium.");
}

}  // namespace
}  // namespace keenfall::planning
