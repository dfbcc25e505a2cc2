// Does a plan's stretch hold with the whole blunting model in the loop? Readings are simulated run
// by run, fitted again at every look by the quick engine, and the trial stops at its first answer.
// KEENFALL_TRIALS sets how many trials of each.
#include "blunting/inference/blunting_data.h"
#include "blunting/quick/quick_fit.h"
#include "blunting/simulated_run.h"
#include "numerics/summaries.h"
#include "verdicts/made_trials_asked_for.h"
#include "verdicts/planned_looks.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <iostream>
#include <string>
#include <vector>

namespace keenfall::verdicts {
namespace {

constexpr double kMargin = 1.5;

trials::Run a_run(const std::string& blade,
                  int place,
                  double ratio,
                  numerics::RandomStream& random) {
  trials::Run run{.name = std::to_string(place),
                  .arm = {.blade = blade, .medium = {.name = "sisal"}}};
  run.readings = blunting::simulated_readings(
      {std::log(104) + 0.06 * random.normal(), std::log(40 * ratio) + 0.25 * random.normal(), 0.7},
      {.checkpoints = {0, 1, 3, 7, 15, 31, 63, 127}, .repeats = 3, .stop_level = 4},
      {.reading_scatter = 0.09, .checkpoint_scatter = 0.03},
      random);
  return run;
}

RatioBounds bounds_at(const trials::Trial& trial, const LookStretch& stretch) {
  const auto data = blunting::prepare(
      trial, {.kind = "thread_push", .thread = ""}, blunting::ReadingErrors::robust);
  const auto arms = blunting::quick_fit(*data, blunting::default_model()).arms;
  blunting::Draws log_ratio = arms[1].log_half_keenness;
  for (std::size_t d = 0; d < log_ratio.size(); ++d) log_ratio[d] -= arms[0].log_half_keenness[d];
  const numerics::Interval ratio = numerics::exp_of(numerics::interval_of(std::move(log_ratio)));
  return stretched(bounds_of(ratio), ratio.median, stretch);
}

struct AtLooks {
  int trials = 0;
  int longer_or_shorter = 0;     // at any look
  int practically_the_same = 0;  // likewise
};

AtLooks looked_at(const std::vector<int>& looks,
                  double ratio,
                  const LookStretch& stretch,
                  std::uint64_t first_seed) {
  AtLooks tally;
  for (int t = 0; t < testing::trials_asked_for(600); ++t) {
    numerics::RandomStream random({first_seed + static_cast<std::uint64_t>(t)}, 0);
    trials::Trial trial{
        .blades = {{.name = "A"}, {.name = "B"}},
        .series = {{.kind = *trials::find_reading_kind("thread_push"), .unit = "gf"}}};
    bool differs = false;
    bool same = false;
    int runs = 0;
    for (const int look : looks) {
      for (; runs < look; ++runs) {
        trial.runs.push_back(a_run("A", runs, 1, random));
        trial.runs.push_back(a_run("B", runs, ratio, random));
      }
      const RatioBounds bounds = bounds_at(trial, stretch);
      differs = differs || bounds.lo95 > 1 || bounds.hi95 < 1;
      same = same || (bounds.lo90 > 1 / kMargin && bounds.hi90 < kMargin);
    }
    ++tally.trials;
    tally.longer_or_shorter += differs ? 1 : 0;
    tally.practically_the_same += same ? 1 : 0;
  }
  std::cout << tally.trials << " trials, ratio " << ratio << ", stretch " << stretch.at_95 << ": "
            << tally.longer_or_shorter << " longer or shorter, " << tally.practically_the_same
            << " practically the same\n";
  return tally;
}

double share(int count, int trials) { return static_cast<double>(count) / trials; }

// 5 %, missed only when missed by more than 2.6 Monte-Carlo errors.
double five_percent(int trials) { return 0.05 + 2.6 * std::sqrt(0.05 * 0.95 / trials); }

TEST(PlannedLooksOverManyTrials, SeldomCallAlikeEdgesDifferentAtAnyLook) {
  const std::vector<int> looks{3, 6, 9};
  const AtLooks tally = looked_at(looks, 1, stretch_for_looks({looks}, {1}), 100);
  const AtLooks unstretched = looked_at(looks, 1, {}, 100);

  EXPECT_LE(share(tally.longer_or_shorter, tally.trials), five_percent(tally.trials));
  EXPECT_GT(unstretched.longer_or_shorter, tally.longer_or_shorter);
}

TEST(PlannedLooksOverManyTrials, SeldomCallEdgesAtTheMarginPracticallyTheSameAtAnyLook) {
  const std::vector<int> looks{6, 9, 12};
  const AtLooks tally = looked_at(looks, kMargin, stretch_for_looks({looks}, {1}), 100000);

  EXPECT_LE(share(tally.practically_the_same, tally.trials), five_percent(tally.trials));
}

}  // namespace
}  // namespace keenfall::verdicts
