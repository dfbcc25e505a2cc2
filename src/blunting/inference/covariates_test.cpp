// What a run's own start and its place in the order of cutting do: simulated, and found again.
#include "blunting/curves/log_logistic.h"
#include "blunting/inference/fitted_simulation.h"
#include "blunting/inference/model_parts.h"
#include "numerics/summaries.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::blunting {
namespace {

constexpr double kStartEffect = 1.4;  // a run that starts keener doubles sooner
constexpr double kDrift = -0.4;

// How wide the 95 % interval of A over B is at a common reading of 600 gf, in logs.
double width_at_common_reading(const BluntingFit& fit) {
  Draws ratio;
  for (std::size_t d = 0; d < fit.arms[0].shape.size(); ++d) {
    double difference = 0;
    for (std::size_t arm = 0; arm < 2; ++arm) {
      const ArmDraws& draws = fit.arms[arm];
      const LogLogistic curve{draws.log_start[d], draws.log_half_keenness[d], draws.shape[d]};
      difference += (arm == 0 ? 1 : -1) * log_cuts_to_reading(curve, std::log(600));
    }
    ratio.push_back(difference);
  }
  const numerics::Interval interval = numerics::interval_of(std::move(ratio));
  return interval.hi95 - interval.lo95;
}

ModelSpec without_covariates() {
  ModelSpec spec = default_model();
  spec.start_effect = false;
  spec.order_drift = false;
  return spec;
}

TEST(StartEffect, IsFoundAgain) {
  const Truth truth{
      .runs_each = 10, .run_scatter = 0.1, .start_scatter = 0.3, .start_effect = kStartEffect};
  const Fitted found = fitted(simulated(truth, 11), default_model(), base::threads(2));

  ASSERT_TRUE(found.fit.diagnostics.usable);
  const numerics::Interval effect = numerics::interval_of(found.fit.start_effect);
  EXPECT_LT(effect.lo95, kStartEffect);
  EXPECT_GT(effect.hi95, kStartEffect);
  EXPECT_LT(effect.hi95 - effect.lo95, 1);
}

// Where starts and half keenness go together they cancel at a far common reading; a model that
// takes them apart adds them up.
TEST(StartEffect, NarrowsAnswersAtACommonReadingWhereStartsScatter) {
  const trials::Trial trial = simulated(
      {.runs_each = 6, .run_scatter = 0.1, .start_scatter = 0.3, .start_effect = kStartEffect}, 12);
  const Fitted with = fitted(trial, default_model(), base::threads(2));
  const Fitted without = fitted(trial, without_covariates(), base::threads(2));

  EXPECT_LT(width_at_common_reading(with.fit), 0.7 * width_at_common_reading(without.fit));
}

TEST(StartEffect, IsNotThoughtOfWhereEveryArmHasOneRun) {
  const Fitted found = fitted(simulated({.runs_each = 1}, 13), default_model(), base::threads(2));

  EXPECT_FALSE(found.fit.parts.start_effect);
}

// Two arms and three runs beyond one each carry it; one run fewer does not.
TEST(StartEffect, IsThoughtOfFromThreeRunsBeyondOneForEachArm) {
  trials::Trial trial = simulated({.runs_each = 3}, 13);
  trial.runs.pop_back();
  const auto with_five = prepare(trial, {.kind = "thread_push"}, default_model().errors);
  trial.runs.pop_back();
  const auto with_four = prepare(trial, {.kind = "thread_push"}, default_model().errors);

  ASSERT_TRUE(with_five && with_four);
  EXPECT_TRUE(parts_for(default_model(), *with_five).start_effect);
  EXPECT_FALSE(parts_for(default_model(), *with_four).start_effect);
}

TEST(OrderDrift, IsFoundAgainAndTakenOutOfTheRunScatter) {
  const Truth truth{.runs_each = 10, .run_scatter = 0.1, .order_drift = kDrift};
  const trials::Trial trial = simulated(truth, 14);
  const Fitted with = fitted(trial, default_model(), base::threads(2));
  const Fitted without = fitted(trial, without_covariates(), base::threads(2));

  const numerics::Interval drift = numerics::interval_of(with.fit.order_drift);
  EXPECT_LT(drift.lo95, kDrift);
  EXPECT_GT(drift.hi95, kDrift);
  EXPECT_LT(drift.hi95, 0);
  EXPECT_LT(numerics::median_of(with.fit.run_scatter[0]),
            0.8 * numerics::median_of(without.fit.run_scatter[0]));
}

TEST(OrderDrift, IsNotThoughtOfWhereTheOrderOfOneRunIsUnknown) {
  trials::Trial trial = simulated({.order_drift = kDrift}, 15);
  trial.runs[3].order.reset();
  const Fitted found = fitted(trial, default_model(), base::threads(2));

  EXPECT_FALSE(found.fit.parts.order_drift);
}

}  // namespace
}  // namespace keenfall::blunting
