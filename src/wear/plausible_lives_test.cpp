#include "wear/plausible_lives.h"

#include <gtest/gtest.h>

namespace keenfall::wear {
namespace {

EdgeQuestion asked_of(const WorkPlan& work) {
  return {.steel = materials::find_microstructure("75Ni8").value(),
          .work = work,
          .edge = {.finish_name = "fine", .finish = fine_finish(), .apex_angle = {20}},
          .edge_length_mm = 2};
}

const LivesAsked kFew{.runs = 3, .over = {.draws = 20, .seed = {3}}};

TEST(PlausibleLives, AreARangeThatHoldsTheUsualLife) {
  const ApexScenario scenario = scenario_of(asked_of(work_in(known_media()[1])));

  const PlausibleLives lives = plausible_lives(scenario, kFew, base::one_thread()).value();

  for (const Sensitivity* life : {&lives.push, &lives.slice}) {
    ASSERT_TRUE(life->joint);
    EXPECT_LT(life->joint->lo90, *life->usual_answer);
    EXPECT_GT(life->joint->hi90, *life->usual_answer);
    EXPECT_EQ(life->draws, 20);
  }
  EXPECT_EQ(*lives.push.usual_answer, *median_life_cuts(scenario, 0, {.runs = 3, .seed = {3}}));
  EXPECT_NE(lives.push.joint->median, lives.slice.joint->median);
}

TEST(PlausibleLives, OfMixedWorkAreARangeOverTheConstantsOfAllItsMedia) {
  WorkPlan mixed = work_in(known_media()[0]);
  mixed.steps[0].cuts = 9;
  mixed.steps.push_back({.what = known_media()[1], .cuts = 1});
  const ApexScenario scenario = scenario_of(asked_of(mixed));

  const PlausibleLives lives = plausible_lives(scenario, kFew, base::one_thread()).value();

  ASSERT_TRUE(lives.push.joint);
  EXPECT_LT(lives.push.joint->lo90, *lives.push.usual_answer);
  EXPECT_GT(lives.push.joint->hi90, *lives.push.usual_answer);
  // Between its media, each alone.
  const auto alone = [](std::size_t medium) {
    return *median_life_cuts(scenario_of(asked_of(work_in(known_media()[medium]))), 0, {.runs = 3});
  };
  EXPECT_LT(*lives.push.usual_answer, alone(0));
  EXPECT_GT(*lives.push.usual_answer, alone(1));
}

TEST(PlausibleLives, ReportTheirProgressOnceThroughAndStopWhereAsked) {
  const ApexScenario scenario = scenario_of(asked_of(work_in(known_media()[1])));
  double last = 0;
  bool rises = true;

  const auto lives =
      plausible_lives(scenario, kFew, base::one_thread(), [&](const base::Progress& progress) {
        rises = rises && progress.fraction_done >= last;
        last = progress.fraction_done;
        return true;
      });
  const auto stopped = plausible_lives(
      scenario, kFew, base::one_thread(), [](const base::Progress&) { return false; });

  ASSERT_TRUE(lives);
  EXPECT_TRUE(rises);
  EXPECT_EQ(last, 1);
  ASSERT_FALSE(stopped);
  EXPECT_EQ(stopped.error().kind, base::ProblemKind::interrupted);
}

}  // namespace
}  // namespace keenfall::wear
