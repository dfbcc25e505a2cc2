#include "planning/own_repeatability.h"

#include "blunting/inference/full_fit.h"
#include "planning/imagined_trial.h"
#include "planning/plan_flaws.h"
#include "verdicts/judge.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::planning {
namespace {

const OwnRepeatability kWithA{
    .blade = "A", .medium = {.name = "sisal"}, .lot = "roll 3", .method = {.cut_length_mm = 100}};

TEST(OwnRepeatability, IsThreeRunsOfOneBladeInOneLot) {
  const auto plan = own_repeatability_plan(kWithA);

  EXPECT_EQ(plan.runs_each, 3);
  ASSERT_EQ(plan.arms.size(), 1U);
  EXPECT_EQ(plan.arms[0].blade, "A");
  EXPECT_EQ(plan.cuttings[0].lot, "roll 3");
  ASSERT_EQ(plan.runs.size(), 3U);
  EXPECT_EQ(plan.runs[2].order, 3);
}

TEST(OwnRepeatability, IsAPlanThatCanBeCut) {
  const std::vector<trials::Claim> claims{own_repeatability_claim(kWithA)};

  EXPECT_TRUE(
      plan_flaws(own_repeatability_plan(kWithA), claims, {}, Purpose::own_repeatability).empty());
}

TEST(OwnRepeatability, ClaimsWhatCouldFail) {
  EXPECT_EQ(own_repeatability_claim(kWithA).words,
            "My runs of A in sisal scatter no more than careful work does: by 35 % or less.");
}

verdicts::Judgement judged(const trials::Plan& plan, double run_log_sd, std::uint64_t seed) {
  const Assumptions assumptions{.cuttings = {{.half_keenness_cuts = 30, .run_log_sd = run_log_sd}}};
  numerics::RandomStream random({seed}, 0);
  const auto trial = imagined_trial(
      {.plan = plan, .assumptions = assumptions, .kind = *trials::find_reading_kind("thread_push")},
      random);
  const auto spec = blunting::default_model();
  const auto data = *blunting::prepare(trial, {.kind = "thread_push", .thread = ""}, spec.errors);
  const auto fit = blunting::fit_blunting(
      data, spec, blunting::sampling_for(data), {1}, base::one_thread(), base::unwatched());
  return verdicts::judge(trial, data, *fit, {}, {1});
}

// Simulate and recover: three runs tell roughly, and the interval says so.
TEST(OwnScatter, OfAFinishedTrialHoldsTheTruth) {
  const auto scatter = own_scatter(judged(own_repeatability_plan(kWithA), 0.2, 5), 0);

  ASSERT_TRUE(scatter);
  EXPECT_EQ(scatter->runs, 3);
  EXPECT_LT(scatter->lo95, 0.2);
  EXPECT_GT(scatter->hi95, 0.2);
  EXPECT_EQ(scatter->expected.run_log_sd, scatter->run_log_sd);
  EXPECT_NEAR(std::log(scatter->expected.half_keenness_cuts / 30), 0, 0.5);
  EXPECT_NEAR(scatter->start_reading, 104, 20);
}

verdicts::Judgement by_hand() {
  verdicts::Judgement judgement;
  judgement.fit.usable = true;
  judgement.arms.push_back({.arm = {.blade = "A"},
                            .runs = 3,
                            .start_reading = numerics::Interval{.median = 100},
                            .half_keenness = verdicts::CutsToLevel{.cuts = {.median = 40}},
                            .run_scatter_log_sd = {.median = 0.18, .lo95 = 0.08, .hi95 = 0.39},
                            .shape = numerics::Interval{.median = 0.7}});
  return judgement;
}

TEST(OwnScatter, IsWhatIsAssumedAfterwards) {
  const OwnScatter scatter = *own_scatter(by_hand(), 0);

  EXPECT_EQ(scatter.expected, (ExpectedCutting{40, 0.7, 0.18}));
  EXPECT_EQ(scatter.start_reading, 100);
  EXPECT_EQ(
      in_words(scatter, "A"),
      "Your runs of A scatter by 20 %, a log sd of 0.18 (95 % interval 8 % to 48 %), told by 3 "
      "runs. Plans may assume this from now on; a few runs tell it only roughly.");
}

TEST(OwnScatter, IsGivenToAPlanInTwoFigures) {
  auto judgement = by_hand();
  judgement.arms[0].run_scatter_log_sd.median = 0.17625;
  judgement.arms[0].half_keenness->cuts.median = 124.7;
  const OwnScatter scatter = *own_scatter(judgement, 0);

  EXPECT_EQ(to_be_assumed(scatter), (ExpectedCutting{120, 0.7, 0.18}));
  EXPECT_EQ(percent_of(scatter), "19 %");
  EXPECT_EQ(interval_of(scatter), "8 % to 48 %");
}

TEST(OwnScatter, IsNotKnownFromAFitThatIsNotUsable) {
  auto judgement = by_hand();
  judgement.fit.usable = false;

  EXPECT_EQ(own_scatter(judgement, 0).error().sentence,
            "The fit of this trial is not usable, so how much runs scatter is not known.");
}

TEST(OwnScatter, IsNotKnownFromOneRun) {
  auto judgement = by_hand();
  judgement.arms[0].runs = 1;

  EXPECT_EQ(own_scatter(judgement, 0).error().sentence,
            "One run of A cannot show how much runs scatter.");
}

TEST(OwnScatter, IsNotKnownOfEdgesThatWereOnlyTested) {
  auto judgement = by_hand();
  judgement.arms[0].shape.reset();

  EXPECT_EQ(own_scatter(judgement, 0).error().sentence,
            "The edges of A were only tested, not read.");
  EXPECT_THROW((void)own_scatter(judgement, 1), std::logic_error);
}

}  // namespace
}  // namespace keenfall::planning
