// Do intervals of edges that were only tested hold as often as they say, with 1, 3 and 6 runs each,
// and how often is alike called longer or shorter? Does the second opinion agree? KEENFALL_TRIALS
// sets how many trials of each.
#include "blunting/times/made_times.h"
#include "blunting/times/time_fit.h"
#include "verdicts/judge_lives.h"
#include "verdicts/made_trials_asked_for.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <iostream>

namespace keenfall::verdicts {
namespace {

struct LivesTally {
  int trials = 0;
  int usable = 0;
  int covered = 0;
  int settled = 0;  // a longer or a shorter
  int agreed = 0;   // with the second opinion
};

bool says_longer_or_shorter(const Comparison& pair) {
  return pair.verdict != Verdict::not_settled && pair.verdict != Verdict::practically_the_same;
}

// Tried every 4 cuts, half of the edges failed after 20 and 20 times the ratio, scatter 0.3.
LivesTally tally_of(int runs_each, double log_ratio, std::uint64_t first_seed, int blocks = 0) {
  LivesTally tally;
  for (int t = 0; t < testing::trials_asked_for(60); ++t) {
    const trials::Trial trial =
        blunting::testing::made_times({.runs_each = runs_each,
                                       .log_median_a = std::log(20),
                                       .log_median_b = std::log(20) + log_ratio,
                                       .scale = 0.165,
                                       .try_every_cuts = 4,
                                       .blocks = blocks,
                                       .given_up_after_cuts = 48},
                                      first_seed + static_cast<std::uint64_t>(t));
    const auto data = blunting::prepare_times(trial, {});
    const auto fit = blunting::fit_times(*data, {}, {1}, base::threads(2), base::unwatched());
    const Judgement found = judge_lives(trial, *data, *fit, {}, {1});
    ++tally.trials;
    if (found.comparisons.empty()) continue;
    ++tally.usable;
    const Comparison& pair = found.comparisons[0];
    const double truth = found.arms[pair.a].arm.blade == "B" ? log_ratio : -log_ratio;
    if (std::log(pair.ratio.lo95) < truth && truth < std::log(pair.ratio.hi95)) ++tally.covered;
    if (says_longer_or_shorter(pair)) ++tally.settled;
    if (pair.quick->agrees) ++tally.agreed;
  }
  std::cout << runs_each << " runs each, " << blocks << " blocks, ratio " << std::exp(log_ratio)
            << ": " << tally.trials << " trials, " << tally.usable << " usable, " << tally.covered
            << " covered, " << tally.settled << " longer or shorter, second opinion agrees in "
            << tally.agreed << "\n";
  return tally;
}

// A bar is missed only when missed by more than 2.6 Monte-Carlo errors.
double slack_about(double share, int trials) {
  return 2.6 * std::sqrt(share * (1 - share) / trials);
}

class EdgeLivesOverManyTrials : public ::testing::TestWithParam<int> {};

TEST_P(EdgeLivesOverManyTrials, CoverTheirRatio) {
  const LivesTally tally = tally_of(GetParam(), std::log(1.8), 300);

  EXPECT_EQ(tally.usable, tally.trials);
  EXPECT_GE(static_cast<double>(tally.covered) / tally.trials,
            0.93 - slack_about(0.93, tally.trials));
}

TEST_P(EdgeLivesOverManyTrials, SeldomCallLongerWhatIsAlike) {
  const LivesTally tally = tally_of(GetParam(), 0, 900);

  EXPECT_LE(static_cast<double>(tally.settled) / tally.trials,
            0.05 + slack_about(0.05, tally.trials));
}

// 97 %, as of curves (docs/methods/quick-engine.md). Of fits 1 % may be unusable.
TEST(EdgeLivesInBlocks, HaveASecondOpinionThatAgrees) {
  LivesTally all;
  for (const double log_ratio : {0.0, std::log(1.8)}) {
    const LivesTally tally = tally_of(3, log_ratio, 1500, 3);
    all.trials += tally.trials;
    all.usable += tally.usable;
    all.agreed += tally.agreed;
  }

  EXPECT_GE(static_cast<double>(all.usable) / all.trials, 0.99 - slack_about(0.99, all.trials));
  EXPECT_GE(static_cast<double>(all.agreed) / all.usable, 0.97 - slack_about(0.97, all.usable));
}

INSTANTIATE_TEST_SUITE_P(RunsEach, EdgeLivesOverManyTrials, ::testing::Values(1, 3, 6));

}  // namespace
}  // namespace keenfall::verdicts
