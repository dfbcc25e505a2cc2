#include "blunting/inference/full_fit.h"

#include "blunting/inference/curve_check.h"
#include "blunting/simulated_run.h"
#include "numerics/summaries.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace keenfall::blunting {
namespace {

struct Truth {
  double ratio = 1;  // of A's half keenness to B's 40 cuts
  int runs_each = 4;
  double run_scatter = 0.25;
  double slip_every = 0;  // every so many readings one is ten times too large; 0: never
};

trials::Trial simulated(const Truth& truth, std::uint64_t seed) {
  numerics::RandomStream random({seed}, 0);
  trials::Trial trial{
      .blades = {{.name = "A"}, {.name = "B"}},
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  double count = 0;
  for (const bool is_a : {true, false}) {
    for (int i = 0; i < truth.runs_each; ++i) {
      const double log_half =
          std::log(40 * (is_a ? truth.ratio : 1)) + truth.run_scatter * random.normal();
      trials::Run run{.name = std::to_string(i),
                      .arm = {.blade = is_a ? "A" : "B", .medium = {.name = "sisal"}}};
      run.readings = simulated_readings(
          {std::log(104) + 0.06 * random.normal(), log_half, is_a ? 0.7 : 0.75},
          {.checkpoints = {0, 1, 3, 7, 15, 31, 63, 127}, .repeats = 3, .stop_level = 4},
          {.reading_scatter = 0.1},
          random);
      for (trials::Reading& reading : run.readings) {
        if (truth.slip_every > 0 && std::fmod(++count, truth.slip_every) == 0)
          reading.reading *= 10;
      }
      trial.runs.push_back(std::move(run));
    }
  }
  return trial;
}

struct Fitted {
  BluntingData data;
  BluntingFit fit;
};

Fitted fitted(const trials::Trial& trial, const ModelSpec& spec, const base::Executor& execute) {
  auto data = prepare(trial, {.kind = "thread_push", .thread = ""}, spec.errors);
  auto fit = fit_blunting(*data, spec, {}, {3}, execute, base::unwatched());
  return {std::move(*data), std::move(*fit)};
}

numerics::Interval log_ratio_of(const BluntingFit& fit) {
  Draws ratio = fit.arms[0].log_half_keenness;
  for (std::size_t d = 0; d < ratio.size(); ++d) ratio[d] -= fit.arms[1].log_half_keenness[d];
  return numerics::interval_of(std::move(ratio));
}

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
  EXPECT_NEAR(numerics::median_of(found.fit.start_scatter), 0.06, 0.03);
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

TEST(CurveCheck, PassesReadingsThatFollowTheCurve) {
  const Fitted found = fitted(simulated({.runs_each = 6}, 7), default_model(), base::threads(2));

  EXPECT_TRUE(check_curve(found.data, found.fit, {3}).misfits.empty());
}

TEST(CurveCheck, NamesWhereReadingsLeaveTheCurve) {
  trials::Trial trial = simulated({.runs_each = 6}, 8);
  // From 31 cuts on every edge of A suddenly reads half as blunt again: a chip, not wear.
  for (trials::Run& run : trial.runs) {
    for (trials::Reading& reading : run.readings) {
      if (run.arm.blade == "A" && reading.cuts == 15) reading.reading *= 1.6;
    }
  }
  const Fitted found = fitted(trial, default_model(), base::threads(2));
  const CurveCheckResult check = check_curve(found.data, found.fit, {3});

  ASSERT_FALSE(check.misfits.empty());
  EXPECT_TRUE(std::ranges::any_of(check.misfits, [](const CurveMisfit& misfit) {
    return misfit.arm == 0 && misfit.cuts == 15 && misfit.log_offset > 0;
  }));
}

// A short coverage check: 60 trials each at 3 and 6 runs, true ratio 1. Bounds: more than 2.6
// binomial standard errors below 93 % coverage, or above 5 % false answers, would fail. The long
// tables come later.
TEST(FullFit, CoversTheTruthAndSeldomSeesADifferenceThatIsNotThere) {
  int covered = 0;
  int false_answers = 0;
  int trials_run = 0;
  for (const int runs_each : {3, 6}) {
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
      const Fitted found = fitted(
          simulated({.runs_each = runs_each}, 100 + seed), default_model(), base::threads(2));
      const numerics::Interval ratio = log_ratio_of(found.fit);
      const bool covers = ratio.lo95 <= 0 && 0 <= ratio.hi95;
      ++trials_run;
      if (found.fit.diagnostics.usable && covers) ++covered;
      if (!covers) ++false_answers;
    }
  }

  const double n = trials_run;
  EXPECT_GE(covered / n, 0.93 - 2.6 * std::sqrt(0.93 * 0.07 / n));
  EXPECT_LE(false_answers / n, 0.05 + 2.6 * std::sqrt(0.05 * 0.95 / n));
}

}  // namespace
}  // namespace keenfall::blunting
