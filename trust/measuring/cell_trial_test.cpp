#include "trust/measuring/cell_trial.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace keenfall::trust {
namespace {

const Cell& cell(std::string_view name) { return *std::ranges::find(cells(), name, &Cell::name); }

TEST(Cells, AllHaveNamesAndDefinitionsOfTheirOwn) {
  std::set<std::string_view> names;
  std::set<std::string> definitions;
  for (const Cell& each : cells()) {
    names.insert(each.name);
    definitions.insert(definition_of(each));
  }

  EXPECT_EQ(names.size(), cells().size());
  EXPECT_EQ(definitions.size(), cells().size());
}

TEST(CellTrial, IsTheSameWheneverItsNumberIs) {
  const Cell& outlier = cell("outlier");

  EXPECT_EQ(cell_trial(outlier, TrueRatio::one, 7).trial.runs,
            cell_trial(outlier, TrueRatio::one, 7).trial.runs);
  EXPECT_NE(cell_trial(outlier, TrueRatio::one, 7).trial.runs,
            cell_trial(outlier, TrueRatio::one, 8).trial.runs);
  EXPECT_NE(cell_trial(outlier, TrueRatio::one, 7).trial.runs,
            cell_trial(outlier, TrueRatio::margin, 7).trial.runs);
}

TEST(CellTrial, HasTheTrueRatioItWasAskedFor) {
  const CellTrial equal = cell_trial(cell("runs-3"), TrueRatio::one, 0);
  const CellTrial margin = cell_trial(cell("runs-3"), TrueRatio::margin, 0);

  EXPECT_DOUBLE_EQ(equal.true_a.log_half_cuts, equal.true_b.log_half_cuts);
  EXPECT_NEAR(margin.true_a.log_half_cuts - margin.true_b.log_half_cuts, std::log(1.5), 1e-12);
  EXPECT_EQ(equal.trial.runs.size(), 6U);
}

// b0 (1 + (x / tau)^p) = 290 for both, at the same x.
TEST(CellTrial, OfUnequalStartsIsAlikeAtTheCommonReading) {
  const CellTrial trial = cell_trial(cell("starts"), TrueRatio::one, 0);
  const auto cuts = [](const blunting::LogLogistic& curve) {
    return curve.log_half_keenness + std::log(290 / std::exp(curve.log_start) - 1) / curve.shape;
  };

  EXPECT_NEAR(std::exp(trial.true_a.curve->log_start), 1.4 * 104, 1e-9);
  EXPECT_NEAR(cuts(*trial.true_a.curve), cuts(*trial.true_b.curve), 1e-9);
}

TEST(CellTrial, OfTheOutlierHasOneReadingFarFromItsRepeats) {
  const CellTrial trial = cell_trial(cell("slip"), TrueRatio::one, 3);
  int far = 0;
  for (const trials::Run& run : trial.trial.runs) {
    for (std::size_t i = 0; i + 2 < run.readings.size(); i += 3) {
      const auto [least, most] = std::minmax(
          {run.readings[i].reading, run.readings[i + 1].reading, run.readings[i + 2].reading});
      if (most > 4 * least) ++far;
    }
  }

  EXPECT_EQ(far, 1);
}

TEST(CellTrial, StopsItsRunsOnceTheyLookTwiceAsBlunt) {
  const CellTrial stopped = cell_trial(cell("stopped-2"), TrueRatio::one, 1);
  const CellTrial whole = cell_trial(cell("runs-4"), TrueRatio::one, 1);

  for (const trials::Run& run : stopped.trial.runs) EXPECT_LE(run.readings.back().cuts, 127);
  EXPECT_TRUE(std::ranges::any_of(
      stopped.trial.runs, [](const trials::Run& run) { return run.readings.back().cuts < 127; }));
  for (const trials::Run& run : whole.trial.runs) EXPECT_EQ(run.readings.back().cuts, 127);
}

}  // namespace
}  // namespace keenfall::trust
