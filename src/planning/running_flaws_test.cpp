#include "planning/running_flaws.h"

#include "planning/made_plan_test.h"
#include "planning/shuffled_order.h"

#include <gtest/gtest.h>

#include <limits>
#include <string>
#include <utility>

namespace keenfall::planning {
namespace {

// What is wrong with a sound, shuffled plan once it is spoiled: nothing or one thing.
template <class Spoil>
base::Problem running_flaw_of(Spoil spoil) {
  auto plan = testing::made_plan();
  plan.runs = *shuffled_order(plan, {});
  spoil(plan);
  Flaws flaws;
  add_flaws_of_running(flaws, plan, testing::made_kit());
  EXPECT_LE(flaws.size(), 1U);
  return flaws.empty() ? base::Problem{} : flaws.front();
}

TEST(RunningFlaws, ACheckpointIsReadUpToAHundredTimes) {
  const auto read = [](int times) {
    return running_flaw_of([times](trials::Plan& plan) { plan.reading.repeats = times; });
  };

  EXPECT_EQ(read(101).sentence, "A checkpoint cannot be read 101 times.");
  EXPECT_EQ(read(101).accepted, "1 to 100; 5 to 7 is usual");
  EXPECT_EQ(read(100).sentence, "");
}

TEST(RunningFlaws, AStartGateHasATargetAndATolerance) {
  const auto gated = [](double target, double tolerance) {
    return running_flaw_of([=](trials::Plan& plan) {
      plan.start_gate =
          trials::StartGate{.target_reading = target, .tolerance_fraction = tolerance};
    });
  };
  const std::string refused =
      "The start gate says what an edge must read before its run; this one cannot be passed.";

  EXPECT_EQ(gated(104, 0).sentence, refused);
  EXPECT_EQ(gated(104, 1).sentence, refused);
  EXPECT_EQ(gated(-104, 0.12).sentence, refused);
  EXPECT_EQ(gated(104, 0).accepted,
            "a reading above 0 and a tolerance between 0 and 1, such as 104 and 0.12");
  EXPECT_EQ(gated(104, 0.12).sentence, "");
}

TEST(RunningFlaws, AStopLevelIsOneThatAnEdgeComesTo) {
  const auto stopped_at = [](double level) {
    return running_flaw_of([level](trials::Plan& plan) { plan.stop = {.level = level}; });
  };

  EXPECT_EQ(stopped_at(0.5).sentence,
            "A stop level is how many times its start an edge may read; 0.5 stops it before it is "
            "blunt.");
  EXPECT_EQ(stopped_at(101).sentence,
            "A stop level is how many times its start an edge may read; 101 is more than any edge "
            "comes to.");
  EXPECT_EQ(stopped_at(101).accepted, "a level above 1, up to 100; 4 is usual");
  EXPECT_EQ(stopped_at(100).sentence, "");
}

TEST(RunningFlaws, AStopReadingIsANumber) {
  const auto stopped_at = [](double reading) {
    return running_flaw_of([reading](trials::Plan& plan) { plan.stop = {.reading = reading}; });
  };

  EXPECT_EQ(stopped_at(std::numeric_limits<double>::infinity()).sentence,
            "A stop reading must be a number above 0.");
  EXPECT_EQ(stopped_at(0).sentence, "A stop reading must be a number above 0.");
  EXPECT_EQ(stopped_at(416).sentence, "");
}

TEST(RunningFlaws, OneRunIsNoLook) {
  const auto flaw = running_flaw_of([](trials::Plan& plan) { plan.looks = {1, 3}; });

  EXPECT_EQ(flaw.sentence,
            "Looks are numbers of runs of every arm; they must rise, from at least 2.");
  EXPECT_EQ(flaw.place.found, "1 3");
}

TEST(RunningFlaws, AThousandRunsOfEachArmAreEnough) {
  const auto flaw = running_flaw_of([](trials::Plan& plan) {
    plan.runs_each = kMostRunsEach + 1;
    plan.runs.clear();
  });

  EXPECT_EQ(flaw.sentence, "1001 runs of each arm cannot be cut.");
  EXPECT_EQ(flaw.accepted, "2 runs each or more, up to 1000; better 4");
}

TEST(RunningFlaws, AnOrderOfOtherArmsOrBlocksIsNotThePlans) {
  const auto order_where = [](auto spoil) {
    const base::Problem flaw = running_flaw_of(spoil);
    EXPECT_EQ(flaw.accepted, "the runs shuffled anew");
    return flaw.sentence;
  };
  const std::string refused =
      "The order of cutting does not belong to this plan: every block has each arm once.";

  EXPECT_EQ(order_where([](trials::Plan& plan) { plan.arms.push_back({.blade = "C"}); }), refused);
  EXPECT_EQ(order_where([](trials::Plan& plan) { plan.runs[3].arm = 2; }), refused);
  EXPECT_EQ(order_where([](trials::Plan& plan) { plan.runs[1].arm = plan.runs[0].arm; }), refused);
  EXPECT_EQ(order_where([](trials::Plan& plan) { plan.runs[0].block = 0; }), refused);
  EXPECT_EQ(order_where([](trials::Plan& plan) { plan.runs.back().block = 5; }), refused);
  EXPECT_EQ(order_where([](trials::Plan& plan) { std::swap(plan.runs[0], plan.runs[1]); }),
            refused);
}

TEST(RunningFlaws, BlocksAreCutOneAfterTheOther) {
  auto plan = testing::made_plan(2, 2);
  plan.runs = {{.arm = 0, .block = 1, .order = 1},
               {.arm = 1, .block = 1, .order = 2},
               {.arm = 1, .block = 2, .order = 3},
               {.arm = 0, .block = 2, .order = 4}};
  ASSERT_TRUE(is_in_order(plan));

  std::swap(plan.runs[1], plan.runs[2]);
  std::swap(plan.runs[1].order, plan.runs[2].order);

  EXPECT_FALSE(is_in_order(plan));
}

TEST(RunningFlaws, APlanThatIsNotShuffledIsInNoOrder) {
  EXPECT_FALSE(is_in_order(testing::made_plan()));
  EXPECT_FALSE(is_in_order(testing::made_plan(2, 0)));
  EXPECT_EQ(running_flaw_of([](trials::Plan& plan) { plan.runs.clear(); }).sentence, "");
}

}  // namespace
}  // namespace keenfall::planning
