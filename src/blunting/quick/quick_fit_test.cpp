#include "blunting/quick/quick_fit.h"

#include "blunting/inference/fitted_simulation.h"
#include "blunting/simulated_run.h"
#include "numerics/summaries.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

namespace keenfall::blunting {
namespace {

numerics::Interval log_ratio_in(const std::vector<ArmDraws>& arms, Draws ArmDraws::*level) {
  Draws ratio = arms[0].*level;
  for (std::size_t d = 0; d < ratio.size(); ++d) ratio[d] -= (arms[1].*level)[d];
  return numerics::interval_of(std::move(ratio));
}

numerics::Interval quick_log_ratio(const QuickFit& fit) {
  return log_ratio_in(fit.arms, &ArmDraws::log_half_keenness);
}

double width_of(const numerics::Interval& interval) { return interval.hi95 - interval.lo95; }

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
    const double sd = width_of(expected) / 3.92;
    EXPECT_NEAR(quick.median, expected.median, 0.3 * sd) << seed;
    width += width_of(quick);
    full_width += width_of(expected);
  }
  EXPECT_NEAR(width / full_width, 1, 0.1);
}

// Both arms of some trials in one number.
struct BesideTheFull {
  double shape_width = 0;  // of 95 % intervals, quick over full, on average
  double half_shift = 0;   // of medians, quick less full, in the full posterior's sds, on average
};

// Readings that scatter by 0.2 place a curve badly enough for its mode to lie off its mean.
BesideTheFull beside_the_full(const ModelSpec& spec, const ReadingNoise& noise) {
  constexpr int kTrials = 4;
  BesideTheFull found;
  for (std::uint64_t seed = 0; seed < kTrials; ++seed) {
    const trials::Trial trial = simulated({.noise = noise, .stop_level = {}}, 300 + seed);
    const Fitted full = fitted(trial, spec, base::threads(2));
    const QuickFit quick = quick_fit(full.data, spec);
    for (std::size_t a = 0; a < 2; ++a) {
      const auto intervals = [a](const std::vector<ArmDraws>& arms, Draws ArmDraws::*level) {
        return numerics::interval_of(arms[a].*level);
      };
      const numerics::Interval half = intervals(full.fit.arms, &ArmDraws::log_half_keenness);
      found.half_shift +=
          (intervals(quick.arms, &ArmDraws::log_half_keenness).median - half.median) /
          (width_of(half) / 3.92) / (2 * kTrials);
      found.shape_width += width_of(intervals(quick.arms, &ArmDraws::shape)) /
                           width_of(intervals(full.fit.arms, &ArmDraws::shape)) / (2 * kTrials);
    }
  }
  return found;
}

TEST(QuickFit, TakesTheScatterOfReadingsFromWhatTheyShow) {
  const BesideTheFull found = beside_the_full(plain_model(), {.reading_scatter = 0.2});

  EXPECT_NEAR(found.shape_width, 1, 0.12);
  EXPECT_NEAR(found.half_shift, 0, 0.1);
}

TEST(QuickFit, TakesTheScatterOfSpotsFromWhatTheyShow) {
  const BesideTheFull found =
      beside_the_full(default_model(), {.reading_scatter = 0.05, .checkpoint_scatter = 0.15});

  EXPECT_NEAR(found.shape_width, 1, 0.12);
  EXPECT_NEAR(found.half_shift, 0, 0.1);
}

// Two pieces of either steel: what pieces scatter is hardly known, and the tails of it matter.
TEST(QuickFit, IsAsUnsureOfTheSteelsAndOfTheBladesAsTheFullPosterior) {
  constexpr int kTrials = 5;
  double steels = 0;
  double blades = 0;
  for (std::uint64_t seed = 0; seed < kTrials; ++seed) {
    const trials::Trial trial = simulated(
        {.runs_each = 6, .run_scatter = 0.1, .specimens_each = 2, .specimen_scatter = 0.2},
        300 + seed);
    const Fitted full = fitted(trial, default_model(), base::threads(2));
    const QuickFit quick = quick_fit(full.data, default_model());
    const auto width = [&](Draws ArmDraws::*which) {
      return width_of(log_ratio_in(quick.arms, which)) /
             width_of(log_ratio_in(full.fit.arms, which));
    };
    steels += width(&ArmDraws::log_half_keenness_steel) / kTrials;
    blades += width(&ArmDraws::log_half_keenness) / kTrials;
  }

  EXPECT_NEAR(steels, 1, 0.1);
  EXPECT_NEAR(blades, 1, 0.1);
}

TEST(QuickFit, GivesTheSameDrawsEveryTime) {
  const BluntingData data = data_of(simulated({}, 3), default_model());

  EXPECT_EQ(quick_fit(data, default_model()).arms[0].log_half_keenness,
            quick_fit(data, default_model()).arms[0].log_half_keenness);
}

TEST(QuickFit, OfOneRunEachIsWide) {
  const BluntingData data = data_of(simulated({.ratio = 3, .runs_each = 1}, 4), default_model());
  const numerics::Interval ratio = quick_log_ratio(quick_fit(data, default_model()));

  EXPECT_GT(width_of(ratio), std::log(3));
}

TEST(QuickFit, IsHardlyMovedBySlipsOfThePen) {
  const numerics::Interval clean = quick_log_ratio(
      quick_fit(data_of(simulated({.ratio = 2}, 3), default_model()), default_model()));
  const numerics::Interval slipped = quick_log_ratio(quick_fit(
      data_of(simulated({.ratio = 2, .slip_every = 40}, 3), default_model()), default_model()));

  EXPECT_NEAR(slipped.median, clean.median, 0.08);
}

TEST(QuickDraws, AreThoseOfAQuickFit) {
  const ModelSpec spec = default_model();
  const BluntingData data = data_of(simulated({}, 3), spec);

  const BluntingFit fit = quick_draws(data, spec);

  EXPECT_EQ(fit.arms[0].log_half_keenness, quick_fit(data, spec).arms[0].log_half_keenness);
  EXPECT_EQ(fit.chains * fit.draws_per_chain, kQuickDraws);
}

}  // namespace
}  // namespace keenfall::blunting
