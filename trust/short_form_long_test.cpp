// Every cell of the table of truth with few trials each; the full engine's coverage and
// calibration; every plan of several looks.
#include "trust/bars_met_test.h"

#include "trust/measuring/calibration.h"
#include "trust/measuring/looks.h"
#include "trust/telling/looks_table.h"
#include "trust/telling/ranks_table.h"

#include <gtest/gtest.h>

#include <string>
#include <variant>

namespace keenfall::trust::testing {
namespace {

class TruthInEveryCell : public ::testing::TestWithParam<Cell> {};

TEST_P(TruthInEveryCell, IsCovered) {
  Cell cell = GetParam();
  if (auto* pair = std::get_if<ApexPair>(&cell.made)) pair->truth_edges = 100;

  expect_bars_met(cell, 60);
}

std::string name_of(const ::testing::TestParamInfo<Cell>& info) {
  std::string name;
  for (const char letter : info.param.name) name += letter == '-' || letter == '.' ? '_' : letter;
  return name;
}

INSTANTIATE_TEST_SUITE_P(Cells,
                         TruthInEveryCell,
                         ::testing::ValuesIn(cells().begin(), cells().end()),
                         name_of);

TEST(TruthByTheFullEngine, IsCoveredWithThreeAndSixRunsOfEach) {
  for (const char* name : {"runs-3", "runs-6"}) {
    const Cell& cell = cell_called(name);
    const Sums sums = full_sums(cell, TrueRatio::one, {.trials = 30});
    const auto measured = [&sums](std::string_view what) {
      return share(sum_of(sums, what), sum_of(sums, counted::kTrials));
    };

    EXPECT_FALSE(is_missed(measured(counted::kCoversHalf), coverage_bar(cell))) << name;
    EXPECT_FALSE(is_missed(measured(counted::kLongerOrShorter), kFalseAnswers)) << name;
    EXPECT_FALSE(is_missed(measured(counted::kUnusable), kUnusableFits)) << name;
    EXPECT_FALSE(is_missed(measured(counted::kAgree), kAgreement)) << name;
  }
}

TEST(PlannedLooks, SeldomGiveAFalseAnswerAtAnyLook) {
  for (const LooksCell& cell : looks_cells()) {
    const int trials = cell.looks.size() > 3 ? 100 : 400;
    for (const TrueRatio ratio : {TrueRatio::one, TrueRatio::margin}) {
      const Sums sums = looks_sums(cell, ratio, {.trials = trials});
      const std::string wrong(ratio == TrueRatio::one ? counted::kLongerOrShorter
                                                      : counted::kTheSame);
      const auto measured = [&](const std::string& what) {
        return share(sum_of(sums, what), trials);
      };

      EXPECT_FALSE(is_missed(measured(wrong), kFalseAnswers)) << cell.name;
      EXPECT_FALSE(is_missed(measured(std::string(counted::kCoversHalf)), kRepeatedIntervals))
          << cell.name;
      EXPECT_GT(sum_of(sums, "unstretched " + wrong), sum_of(sums, wrong)) << cell.name;
    }
  }
}

// Of 60 trials three fall into each bin: too few to see but a gross mistake.
TEST(CalibrationOfTheFullEngine, HasUniformRanks) {
  const Sums ranks = full_ranks(calibration_designs()[2], {.trials = 60});

  ASSERT_FALSE(ranked_parameters(ranks).empty());
  for (const RankedParameter& parameter : ranked_parameters(ranks)) {
    EXPECT_GT(parameter.p, 1e-4) << parameter.name;
  }
}

}  // namespace
}  // namespace keenfall::trust::testing
