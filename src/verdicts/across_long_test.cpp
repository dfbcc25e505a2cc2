// Statements across media and factors, from readings with a known truth: do their intervals hold
// it?
#include "blunting/simulated_run.h"
#include "numerics/summaries.h"
#include "verdicts/judge.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <string>

namespace keenfall::verdicts {
namespace {

// Log half keenness of three blades in two media: the gap between them closes in the second.
constexpr std::array<std::array<double, 2>, 3> kLogHalf{{{3.4, 2.2}, {3.8, 2.3}, {4.4, 2.4}}};

trials::Trial three_blades_in_two_media(std::uint64_t seed) {
  numerics::RandomStream random({seed}, 0);
  trials::Trial trial{
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  for (std::size_t blade = 0; blade < kLogHalf.size(); ++blade) {
    const std::string name(1, static_cast<char>('A' + blade));
    trial.blades.push_back({.name = name});
    for (std::size_t medium = 0; medium < 2; ++medium) {
      for (int i = 0; i < 3; ++i) {
        trials::Run run{
            .name = std::to_string(i),
            .arm = {.blade = name, .medium = {.name = medium == 0 ? "clean" : "gritty"}}};
        run.readings = blunting::simulated_readings(
            {std::log(104) + 0.05 * random.normal(),
             kLogHalf[blade][medium] + 0.2 * random.normal(),
             medium == 0 ? 0.65 : 0.8},
            {.checkpoints = {0, 1, 3, 7, 15, 31, 63, 127}, .repeats = 3, .stop_level = 5},
            {.reading_scatter = 0.09},
            random);
        trial.runs.push_back(std::move(run));
      }
    }
  }
  return trial;
}

Judgement judged_trial(const trials::Trial& trial) {
  const auto data =
      blunting::prepare(trial, blunting::fits_of(trial)[0], blunting::ReadingErrors::robust);
  const auto fit = blunting::fit_blunting(
      *data, blunting::default_model(), {}, {2}, base::threads(2), base::unwatched());
  return judge(trial, *data, *fit, {}, {2});
}

bool holds(const numerics::Interval& interval, double truth) {
  return interval.lo95 <= truth && truth <= interval.hi95;
}

double spread_in(std::size_t medium) {
  return std::sqrt(numerics::variance_of(
      std::array{kLogHalf[0][medium], kLogHalf[1][medium], kLogHalf[2][medium]}));
}

TEST(AcrossMediaAndFactors, IntervalsHoldTheTruthOfSimulatedTrials) {
  constexpr int kTrials = 30;
  int interaction = 0;
  int wide_spread = 0;
  int narrow_spread = 0;
  int spread_ratio = 0;
  int main_effect = 0;
  for (std::uint64_t seed = 0; seed < kTrials; ++seed) {
    const Judgement found = judged_trial(three_blades_in_two_media(700 + seed));
    ASSERT_TRUE(found.media && found.factors);
    for (const MediaInteraction& one : found.media->interactions) {
      if (one.a + one.b != 2 || one.a == one.b) continue;  // C and A
      const double truth = std::exp((4.4 - 3.4) - (2.4 - 2.2));
      if (holds(one.ratio, one.a == 2 ? truth : 1 / truth)) ++interaction;
    }
    if (holds(found.media->media[0].spread, spread_in(0))) ++wide_spread;
    if (holds(found.media->media[1].spread, spread_in(1))) ++narrow_spread;
    if (holds(found.media->pairs[0].spread_ratio, spread_in(1) / spread_in(0))) ++spread_ratio;
    // Blade C against A, averaged over the media.
    if (holds(found.factors->effects[1].ratio, std::exp(0.5 * (4.4 - 3.4 + 2.4 - 2.2))))
      ++main_effect;
  }

  const double lowest = 0.95 - 2.6 * std::sqrt(0.95 * 0.05 / kTrials);
  EXPECT_GE(interaction / double{kTrials}, lowest);
  EXPECT_GE(wide_spread / double{kTrials}, lowest);
  EXPECT_GE(narrow_spread / double{kTrials}, lowest);
  EXPECT_GE(spread_ratio / double{kTrials}, lowest);
  EXPECT_GE(main_effect / double{kTrials}, lowest);
  RecordProperty("interaction", interaction);
  RecordProperty("wide_spread", wide_spread);
  RecordProperty("narrow_spread", narrow_spread);
  RecordProperty("spread_ratio", spread_ratio);
  RecordProperty("main_effect", main_effect);
}

}  // namespace
}  // namespace keenfall::verdicts
