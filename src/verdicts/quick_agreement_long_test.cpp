// Do the quick and the full engine come to the same verdict? Trials over a spread of designs: 2 or
// 3 edges, 3, 4 or 6 runs each, true ratios 1 to 3, run scatters 0.15 to 0.4; some with slips of
// the pen, some stopped as soon as the reading doubled, some in blocks. KEENFALL_TRIALS sets how
// many.
#include "blunting/inference/full_fit.h"
#include "blunting/simulated_run.h"
#include "verdicts/judge.h"
#include "verdicts/made_trials_asked_for.h"
#include "verdicts/second_opinion.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <string>

namespace keenfall::verdicts {
namespace {

template <class Values>
auto one_of(const Values& values, numerics::RandomStream& random) {
  return values[random.below(values.size())];
}

trials::Trial a_trial(std::uint64_t seed) {
  numerics::RandomStream random({seed}, 0);
  const auto arms = 2 + random.below(2);
  const int runs = one_of(std::array{3, 4, 6}, random);
  const double scatter = 0.15 + 0.25 * random.uniform();
  const bool slips = random.below(4) == 0;
  const bool stops_early = random.below(4) == 0;
  const bool blocks = random.below(3) == 0;
  trials::Trial trial{
      .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
  std::vector<double> block_effects;
  for (int r = 0; r < runs; ++r) block_effects.push_back(blocks ? 0.08 * random.normal() : 0);
  for (std::uint64_t a = 0; a < arms; ++a) {
    const std::string blade(1, static_cast<char>('A' + a));
    trial.blades.push_back({.name = blade});
    const double ratio = a == 0 ? 1 : one_of(std::array{1.0, 1.25, 1.5, 2.0, 3.0}, random);
    const double shape = 0.7 * std::exp(0.08 * random.normal());
    for (int r = 0; r < runs; ++r) {
      trials::Run run{.name = std::to_string(r + 1),
                      .arm = {.blade = blade, .medium = {.name = "sisal"}}};
      if (blocks) run.block = run.name;
      run.readings =
          blunting::simulated_readings({std::log(104) + 0.06 * random.normal(),
                                        std::log(40 * ratio) + scatter * random.normal() +
                                            block_effects[static_cast<std::size_t>(r)],
                                        shape},
                                       {.checkpoints = {0, 1, 3, 7, 15, 31, 63, 127},
                                        .repeats = 3,
                                        .stop_level = stops_early ? 2.0 : 4.0},
                                       {.reading_scatter = 0.09, .checkpoint_scatter = 0.03},
                                       random);
      if (slips && random.below(2) == 0) {
        run.readings[random.below(run.readings.size())].reading *= 2.5;
      }
      trial.runs.push_back(std::move(run));
    }
  }
  return trial;
}

struct Agreement {
  int trials = 0;
  int agreeing = 0;  // in every comparison
  int comparisons = 0;
  int agreeing_comparisons = 0;
  int near_boundary = 0;  // of the disagreeing comparisons
};

void add_trial(Agreement& agreement, std::uint64_t seed) {
  const trials::Trial trial = a_trial(seed);
  const auto data = blunting::prepare(
      trial, {.kind = "thread_push", .thread = ""}, blunting::ReadingErrors::robust);
  const blunting::ModelSpec spec = blunting::default_model();
  const auto fit = blunting::fit_blunting(
      *data, spec, blunting::sampling_for(*data), {1}, base::threads(2), base::unwatched());
  Judgement judgement = judge(trial, *data, *fit, {}, {1});
  if (!judgement.fit.usable) return;
  add_second_opinions(judgement, trial, *data, spec);
  bool all = true;
  for (const Comparison& pair : judgement.comparisons) {
    ++agreement.comparisons;
    if (pair.quick->agrees) {
      ++agreement.agreeing_comparisons;
    } else {
      all = false;
      agreement.near_boundary += pair.near_boundary ? 1 : 0;
    }
  }
  ++agreement.trials;
  agreement.agreeing += all ? 1 : 0;
}

TEST(QuickEngine, ComesToTheSameVerdictAsTheFullOne) {
  const int trials = testing::trials_asked_for(60);
  Agreement agreement;
  for (int t = 0; t < trials; ++t) add_trial(agreement, 5000 + static_cast<std::uint64_t>(t));

  const double n = agreement.comparisons;
  const double share = agreement.agreeing_comparisons / n;
  RecordProperty("agreeing_comparisons", agreement.agreeing_comparisons);
  RecordProperty("comparisons", agreement.comparisons);
  std::printf(
      "%d trials, %d in every comparison; %d comparisons, %d agree, %d of the rest near a "
      "boundary\n",
      agreement.trials,
      agreement.agreeing,
      agreement.comparisons,
      agreement.agreeing_comparisons,
      agreement.near_boundary);
  EXPECT_EQ(agreement.trials, trials);
  EXPECT_GE(share, 0.97 - 2.6 * std::sqrt(0.97 * 0.03 / n));
}

}  // namespace
}  // namespace keenfall::verdicts
