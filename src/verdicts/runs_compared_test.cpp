#include "verdicts/runs_compared.h"

#include "verdicts/made_judgement_test.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

namespace keenfall::verdicts {
namespace {

// One run that starts at 100, doubles (or halves) after 40 cuts by the power 0.7, and was read at
// these cuts, without error.
struct OneRun {
  blunting::BluntingData data;
  blunting::BluntingFit fit;
};

OneRun one_run(const std::vector<double>& cuts, const std::string& kind = "thread_push") {
  OneRun one{.data = {.kind = *trials::find_reading_kind(kind)}};
  const double sign = one.data.higher_is_keener() ? -1 : 1;
  blunting::RunData run;
  for (const double at : cuts) {
    run.checkpoints.push_back(
        {.cuts = at,
         .log_cuts = std::log(at),
         .log_bluntness = sign * std::log(100) + std::log1p(std::pow(at / 40, 0.7))});
  }
  one.data.runs.push_back(std::move(run));
  const blunting::Draws start(200, sign * std::log(100));
  const blunting::Draws half(200, std::log(40));
  one.fit.arms.push_back({.log_start = start,
                          .log_half_keenness = half,
                          .log_half_keenness_steel = half,
                          .shape = blunting::Draws(200, 0.7)});
  one.fit.runs.push_back(
      {.log_start_median = start[0], .log_start = start, .log_half_keenness = half});
  return one;
}

RunResult compared(const OneRun& one, const At& at) {
  RunResult result;
  put_compared_cuts(result, one.data, one.fit, 0, at);
  return result;
}

// Closed form: the reading is 100 (1 + (cuts / 40)^0.7), so it is r at 40 (r / 100 - 1)^(1 / 0.7).
TEST(RunsCompared, LastToTheReadingTheirMediumIsComparedAt) {
  const RunResult result =
      compared(one_run({0, 40, 255}), {.what = ComparedAt::common_reading, .reading = 300});

  EXPECT_NEAR(result.compared_cuts->median, 40 * std::pow(2, 1 / 0.7), 1e-9);
  EXPECT_FALSE(result.stopped_before_compared);
}

TEST(RunsCompared, LastToALevelOfTheirOwnStart) {
  const At four{.what = ComparedAt::level, .level = 4};

  EXPECT_NEAR(
      compared(one_run({0, 40, 255}), four).compared_cuts->median, 40 * std::pow(3, 1 / 0.7), 1e-9);
  EXPECT_FALSE(compared(one_run({0, 40, 255}), four).stopped_before_compared);
  EXPECT_TRUE(compared(one_run({0, 40, 100}), four).stopped_before_compared);
}

// The same by a kind of which more is keener: 100 / (1 + (cuts / 40)^0.7) is 25 where the bluntness
// has risen four times.
TEST(RunsCompared, LastToWhereAReadingHasFallenToIfHigherIsKeener) {
  const OneRun one = one_run({0, 40, 255}, "card_bite");

  const RunResult result = compared(one, {.what = ComparedAt::common_reading, .reading = 25});

  EXPECT_NEAR(result.compared_cuts->median, 40 * std::pow(3, 1 / 0.7), 1e-9);
  EXPECT_FALSE(result.stopped_before_compared);
}

TEST(RunsCompared, HaveNextToNoCutsWhereTheyStartPastTheReading) {
  const RunResult result =
      compared(one_run({0, 40, 255}), {.what = ComparedAt::common_reading, .reading = 90});

  EXPECT_LT(result.compared_cuts->median, 1e-3);
}

TEST(WhereCompared, IsAskedOfEachMedium) {
  Judgement judgement = testing::made_judgement();
  for (Comparison& pair : judgement.comparisons) {
    if (pair.a > 2) pair.at = {.what = ComparedAt::common_reading, .reading = 400};
  }

  EXPECT_EQ(where_compared(judgement, 0), (At{.what = ComparedAt::half_keenness}));
  EXPECT_EQ(where_compared(judgement, 3).reading, 400);
}

TEST(WhereCompared, OfArmsThatAreNotComparedIsHalfKeennessOrTheTest) {
  Judgement judgement = testing::made_judgement();
  judgement.comparisons.clear();
  EXPECT_EQ(where_compared(judgement, 0).what, ComparedAt::half_keenness);

  judgement.test = TestJudged{};
  EXPECT_EQ(where_compared(judgement, 0).what, ComparedAt::test);
}

}  // namespace
}  // namespace keenfall::verdicts
