#include "verdicts/judge_lives.h"

#include "blunting/times/made_times.h"
#include "blunting/times/time_fit.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace keenfall::verdicts {
namespace {

using blunting::testing::made_times;
using blunting::testing::MadeTimes;

Judgement lives_judged(const trials::Trial& trial, const LivesQuestion& question = {}) {
  const auto data = blunting::prepare_times(trial, {});
  const auto fit = blunting::fit_times(*data, {}, {1}, base::threads(2), base::unwatched());
  return judge_lives(trial, *data, *fit, question, {1});
}

// Half of A's edges fail after 20 cuts of new and 10 of uplifted matting, of B's after 60 and 10.
trials::Trial in_two_media() {
  MadeTimes made{.runs_each = 8,
                 .log_median_a = std::log(20),
                 .log_median_b = std::log(60),
                 .scale = 0.1,
                 .try_every_cuts = 2,
                 .given_up_after_cuts = 200};
  trials::Trial trial = made_times(made, 1);
  made.log_median_a = made.log_median_b = std::log(10);
  for (trials::Run& run : made_times(made, 2).runs) {
    run.arm.medium.name = "uplifted matting";
    trial.runs.push_back(run);
  }
  return trial;
}

// Fitted once for all that is asked of it.
const Judgement& judged_in_two_media() {
  static const Judgement found = lives_judged(in_two_media());
  return found;
}

TEST(JudgeLives, SaysHowManyCutsUntilHalfOfTheEdgesFail) {
  const Judgement& found = judged_in_two_media();

  ASSERT_EQ(found.arms.size(), 4U);
  EXPECT_LT(found.arms[0].test->cuts.lo95, 20);
  EXPECT_GT(found.arms[0].test->cuts.hi95, 20);
  EXPECT_EQ(found.arms[0].test->runs_that_reached, 8);
  EXPECT_FALSE(found.arms[0].test->beyond_what_was_cut);
}

TEST(JudgeLives, ComparesTheBladesOfEachMedium) {
  const Judgement& found = judged_in_two_media();

  ASSERT_EQ(found.comparisons.size(), 2U);
  const Comparison& pair = found.comparisons[0];
  EXPECT_EQ(found.arms[pair.a].arm.blade, "B");
  EXPECT_LT(pair.ratio.lo95, 3);
  EXPECT_GT(pair.ratio.hi95, 3);
  EXPECT_EQ(pair.verdict, Verdict::longer_and_worth_having);
  EXPECT_EQ(pair.quick->verdict, Verdict::longer_and_worth_having);
}

TEST(JudgeLives, SaysThatTheAdvantageDependsOnTheMedium) {
  const Judgement& found = judged_in_two_media();

  ASSERT_TRUE(found.media);
  EXPECT_EQ(found.media->at.what, ComparedAt::test);
  ASSERT_EQ(found.media->interactions.size(), 1U);
  EXPECT_LT(found.media->interactions[0].ratio.lo95, 3);  // (60 / 20) / (10 / 10)
  EXPECT_GT(found.media->interactions[0].ratio.hi95, 3);
  EXPECT_EQ(found.media->interactions[0].verdict, Verdict::longer_and_worth_having);
}

TEST(JudgeLives, GivesTheEffectsOfCrossedFactors) {
  const Judgement& found = judged_in_two_media();

  ASSERT_TRUE(found.factors);
  ASSERT_EQ(found.factors->factors.size(), 2U);
  EXPECT_EQ(found.factors->factors[1].what, "medium");
  // From 20 and 60 cuts to 10 and 10: the root of 10 x 10 / (20 x 60).
  const double truth = std::sqrt(100.0 / 1200);
  EXPECT_LT(found.factors->effects[1].ratio.lo95, truth);
  EXPECT_GT(found.factors->effects[1].ratio.hi95, truth);
}

TEST(JudgeLives, OfBladesThatNeverFailedIsKnownFromBelow) {
  const Judgement found = lives_judged(made_times({.log_median_b = 9}, 3));

  EXPECT_TRUE(std::ranges::any_of(found.cannot_say, [](const std::string& sentence) {
    return sentence.find("No run of B on matting was seen to fail") == 0;
  }));
  EXPECT_TRUE(found.comparisons[0].beyond_what_was_cut);
}

TEST(JudgeLives, RefusesAMarginThatIsNoMargin) {
  EXPECT_THROW((void)lives_judged(made_times({}, 1), {.worth_it_margin = 1}), std::logic_error);
}

}  // namespace
}  // namespace keenfall::verdicts
