#include "trust/bars_met_test.h"

#include "trust/measuring/calibration.h"
#include "trust/measuring/looks.h"
#include "trust/telling/looks_table.h"
#include "trust/telling/ranks_table.h"

#include <gtest/gtest.h>

namespace keenfall::trust::testing {
namespace {

constexpr int kTrials = 60;

TEST(Truth, IsCoveredWithThreeRunsOfEach) { expect_bars_met(cell_called("runs-3"), kTrials); }

TEST(Truth, IsCoveredWithSixRunsOfEach) { expect_bars_met(cell_called("runs-6"), kTrials); }

TEST(Truth, IsCoveredWhereOneReadingIsFarOut) { expect_bars_met(cell_called("outlier"), kTrials); }

TEST(Truth, IsCoveredWhereRunsStopAsSoonAsTheyLookBlunt) {
  expect_bars_met(cell_called("stopped-2"), kTrials);
}

// Edges that differ by the margin of 1.5 are told apart far more often than edges alike: the engine
// does not meet its bars by never saying anything.
TEST(Truth, IsSaidWhereThereIsADifference) {
  const Cell& cell = cell_called("runs-10");
  const Sums alike = quick_sums(cell, TrueRatio::one, {.trials = kTrials});
  const Sums apart = quick_sums(cell, TrueRatio::margin, {.trials = kTrials});

  EXPECT_GE(sum_of(apart, counted::kLongerOrShorter), 0.5 * kTrials);
  EXPECT_LE(sum_of(alike, counted::kLongerOrShorter), 0.15 * kTrials);
  EXPECT_GE(sum_of(alike, counted::kTheSame), 0.5 * kTrials);
}

TEST(Truth, IsAnsweredAlikeByBothEngines) {
  const Sums sums = full_sums(cell_called("runs-3"), TrueRatio::margin, {.trials = 4});

  EXPECT_EQ(sum_of(sums, counted::kTrials), 4);
  EXPECT_EQ(sum_of(sums, counted::kUnusable), 0);
  EXPECT_GE(sum_of(sums, counted::kAgree), 3);
}

TEST(Truth, IsCoveredAtAllLooksOfAPlan) {
  for (const TrueRatio ratio : {TrueRatio::one, TrueRatio::margin}) {
    const Sums sums = looks_sums(looks_cells().front(), ratio, {.trials = kTrials});
    const auto wrong = ratio == TrueRatio::one ? counted::kLongerOrShorter : counted::kTheSame;

    EXPECT_FALSE(is_missed(share(sum_of(sums, counted::kCoversHalf), kTrials), kRepeatedIntervals));
    EXPECT_FALSE(is_missed(share(sum_of(sums, wrong), kTrials), kFalseAnswers));
    EXPECT_GE(sum_of(sums, counted::kCoversHalf), sum_of(sums, "unstretched covers half"));
  }
}

// Of 60 trials three fall into each bin: too few to see but a gross mistake.
TEST(Calibration, OfTheQuickEngineHasUniformRanks) {
  for (const CalibrationDesign& design : calibration_designs()) {
    const Sums ranks = quick_ranks(design, {.trials = kTrials});
    ASSERT_FALSE(ranked_parameters(ranks).empty());
    for (const RankedParameter& parameter : ranked_parameters(ranks)) {
      EXPECT_GT(parameter.p, 1e-4) << design.name << ": " << parameter.name;
    }
  }
}

}  // namespace
}  // namespace keenfall::trust::testing
