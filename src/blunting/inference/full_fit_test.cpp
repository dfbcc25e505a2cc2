#include "blunting/inference/full_fit.h"

#include "blunting/inference/fitted_simulation.h"
#include "numerics/summaries.h"

#include <gtest/gtest.h>

#include <cmath>

namespace keenfall::blunting {
namespace {

TEST(FullFit, RecoversTheTruthOfALargeTrial) {
  const Fitted found =
      fitted(simulated({.ratio = 2, .runs_each = 24}, 1), default_model(), base::threads(2));

  ASSERT_TRUE(found.fit.diagnostics.usable);
  const numerics::Interval ratio = log_ratio_of(found.fit);
  EXPECT_LT(ratio.lo95, std::log(2));
  EXPECT_GT(ratio.hi95, std::log(2));
  EXPECT_NEAR(numerics::median_of(found.fit.run_scatter[0]), 0.25, 0.08);
  EXPECT_NEAR(numerics::median_of(found.fit.arms[0].shape), 0.7, 0.05);
  EXPECT_NEAR(numerics::median_of(found.fit.arms[1].shape), 0.75, 0.05);
  EXPECT_NEAR(numerics::median_of(found.fit.start_scatter[0]), 0.06, 0.03);
  EXPECT_NEAR(numerics::median_of(found.fit.reading_scatter), 0.1, 0.01);
}

TEST(FullFit, GivesTheSameNumbersOnOneThreadAndOnMany) {
  const trials::Trial trial = simulated({}, 2);
  const Fitted one = fitted(trial, default_model(), base::one_thread());
  const Fitted many = fitted(trial, default_model(), base::threads(4));

  EXPECT_EQ(one.fit.arms[0].log_half_keenness, many.fit.arms[0].log_half_keenness);
  EXPECT_EQ(one.fit.diagnostics.ess_bulk_min, many.fit.diagnostics.ess_bulk_min);
}

TEST(FullFit, IsHardlyMovedBySlipsOfThePen) {
  const Fitted clean = fitted(simulated({.ratio = 2}, 3), default_model(), base::threads(2));
  const Fitted slipped =
      fitted(simulated({.ratio = 2, .slip_every = 40}, 3), default_model(), base::threads(2));
  const Fitted naive =
      fitted(simulated({.ratio = 2, .slip_every = 40}, 3), plain_model(), base::threads(2));

  EXPECT_NEAR(log_ratio_of(slipped.fit).median, log_ratio_of(clean.fit).median, 0.06);
  EXPECT_LT(numerics::median_of(slipped.fit.reading_scatter), 0.13);
  EXPECT_GT(numerics::median_of(naive.fit.reading_scatter), 0.2);
}

TEST(FullFit, OfOneRunEachIsUsableAndWide) {
  const Fitted found =
      fitted(simulated({.ratio = 3, .runs_each = 1}, 4), default_model(), base::threads(2));

  ASSERT_TRUE(found.fit.diagnostics.usable);
  const numerics::Interval ratio = log_ratio_of(found.fit);
  EXPECT_GT(ratio.hi95 - ratio.lo95, std::log(3));
}

TEST(FullFit, OfRunsWithoutAnyScatterIsUsable) {
  trials::Trial trial = simulated({}, 5);
  for (trials::Run& run : trial.runs) run.readings = trial.runs[0].readings;
  const Fitted found = fitted(trial, default_model(), base::threads(2));

  EXPECT_TRUE(found.fit.diagnostics.usable);
  EXPECT_NEAR(log_ratio_of(found.fit).median, 0, 0.05);
}

TEST(FullFit, StopsWhenAsked) {
  const auto data =
      prepare(simulated({}, 6), {.kind = "thread_push", .thread = ""}, ReadingErrors::robust);
  const auto fit =
      fit_blunting(*data, default_model(), {}, {3}, base::one_thread(), [](const base::Progress&) {
        return false;
      });

  ASSERT_FALSE(fit);
  EXPECT_EQ(fit.error().kind, base::ProblemKind::interrupted);
}

}  // namespace
}  // namespace keenfall::blunting
