#include "blunting/quick/quick_fit.h"

#include "blunting/inference/fitted_simulation.h"
#include "blunting/simulated_run.h"
#include "numerics/summaries.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <ctime>

namespace keenfall::blunting {
namespace {

numerics::Interval quick_log_ratio(const QuickFit& fit) {
  Draws ratio = fit.arms[0].log_half_keenness;
  for (std::size_t d = 0; d < ratio.size(); ++d) ratio[d] -= fit.arms[1].log_half_keenness[d];
  return numerics::interval_of(std::move(ratio));
}

BluntingData data_of(const trials::Trial& trial, const ModelSpec& spec) {
  return *prepare(trial, {.kind = "thread_push", .thread = ""}, spec.errors);
}

// Readings without error leave half keenness itself, so that a pair is two samples of normal runs
// and the posterior of the difference that of a normal model: given the scatter s, a normal about
// the difference of means with variance 2 s^2 / n; s with a half-normal prior. Integrated here by
// brute force over s, apart from the engine.
TEST(QuickFit, OfExactReadingsIsTheNormalModelWithItsScatterIntegratedOut) {
  const int runs = 5;
  trials::Trial trial = simulated({.ratio = 1.6, .runs_each = runs}, 6);
  numerics::RandomStream random({77}, 0);
  std::vector<double> halves[2];
  for (trials::Run& run : trial.runs) {
    const std::size_t arm = run.arm.blade == "A" ? 0 : 1;
    const double half = std::log(40 + 20 * static_cast<double>(arm == 0)) + 0.25 * random.normal();
    halves[arm].push_back(half);
    run.readings = simulated_readings({std::log(104), half, 0.7},
                                      {.checkpoints = {0, 5, 20, 40, 80, 160}},
                                      {.reading_scatter = 0.0005},
                                      random);
  }
  ModelSpec spec = plain_model();
  const numerics::Interval quick = quick_log_ratio(quick_fit(data_of(trial, spec), spec));

  double squares = 0;
  double difference = 0;
  for (std::size_t arm = 0; arm < 2; ++arm) {
    const double mean = numerics::mean_of(halves[arm]);
    difference += arm == 0 ? mean : -mean;
    for (const double half : halves[arm]) squares += (half - mean) * (half - mean);
  }
  double total = 0;
  double below = 0;
  const double reach = quick.hi95 - difference;
  for (int thousandths = 5; thousandths < 3000; ++thousandths) {
    const double s = thousandths / 1000.0;
    const double weight =
        std::pow(s, -2.0 * (runs - 1)) * std::exp(-squares / (2 * s * s) - s * s / (2 * 0.5 * 0.5));
    total += weight;
    below += weight * 0.5 * std::erfc(-reach / (s * std::sqrt(2.0 / runs)) / std::sqrt(2.0));
  }
  EXPECT_NEAR(quick.median, difference, 0.02);
  EXPECT_NEAR(below / total, 0.975, 0.004);
}

TEST(QuickFit, IsCloseToTheFullPosteriorAndAsWide) {
  double width = 0;
  double full_width = 0;
  for (std::uint64_t seed = 0; seed < 8; ++seed) {
    const trials::Trial trial = simulated({.ratio = 1.5, .runs_each = 4}, 300 + seed);
    const Fitted full = fitted(trial, default_model(), base::threads(2));
    const numerics::Interval expected = log_ratio_of(full.fit);
    const numerics::Interval quick = quick_log_ratio(quick_fit(full.data, default_model()));
    const double sd = (expected.hi95 - expected.lo95) / 3.92;
    EXPECT_NEAR(quick.median, expected.median, 0.3 * sd) << seed;
    width += quick.hi95 - quick.lo95;
    full_width += expected.hi95 - expected.lo95;
  }
  EXPECT_NEAR(width / full_width, 1, 0.1);
}

TEST(QuickFit, GivesTheSameDrawsEveryTime) {
  const BluntingData data = data_of(simulated({}, 3), default_model());

  EXPECT_EQ(quick_fit(data, default_model()).arms[0].log_half_keenness,
            quick_fit(data, default_model()).arms[0].log_half_keenness);
}

TEST(QuickFit, OfOneRunEachIsWide) {
  const BluntingData data = data_of(simulated({.ratio = 3, .runs_each = 1}, 4), default_model());
  const numerics::Interval ratio = quick_log_ratio(quick_fit(data, default_model()));

  EXPECT_GT(ratio.hi95 - ratio.lo95, std::log(3));
}

TEST(QuickFit, IsHardlyMovedBySlipsOfThePen) {
  const numerics::Interval clean = quick_log_ratio(
      quick_fit(data_of(simulated({.ratio = 2}, 3), default_model()), default_model()));
  const numerics::Interval slipped = quick_log_ratio(quick_fit(
      data_of(simulated({.ratio = 2, .slip_every = 40}, 3), default_model()), default_model()));

  EXPECT_NEAR(slipped.median, clean.median, 0.08);
}

#ifdef NDEBUG
// Two edges, six runs each, eight checkpoints: under 3 ms of processor time (a mean of 20).
TEST(QuickFit, OfAUsualTrialTakesUnderThreeMilliseconds) {
  const BluntingData data = data_of(simulated({.runs_each = 6}, 5), default_model());
  constexpr int kTimes = 20;
  const std::clock_t start = std::clock();
  for (int i = 0; i < kTimes; ++i) (void)quick_fit(data, default_model());
  const double milliseconds =
      1e3 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC / kTimes;

  RecordProperty("milliseconds", std::to_string(milliseconds));
  EXPECT_LT(milliseconds, 3);
}
#endif

}  // namespace
}  // namespace keenfall::blunting
