// Every cell of the table of truth, with few trials each, and the calibration of the full engine.
#include "trust/bars_met_test.h"

#include "trust/measuring/calibration.h"
#include "trust/telling/ranks_table.h"

#include <gtest/gtest.h>

#include <string>

namespace keenfall::trust::testing {
namespace {

class TruthInEveryCell : public ::testing::TestWithParam<Cell> {};

TEST_P(TruthInEveryCell, IsCovered) { expect_bars_met(GetParam(), 60); }

std::string name_of(const ::testing::TestParamInfo<Cell>& info) {
  std::string name;
  for (const char letter : info.param.name) name += letter == '-' || letter == '.' ? '_' : letter;
  return name;
}

INSTANTIATE_TEST_SUITE_P(Cells,
                         TruthInEveryCell,
                         ::testing::ValuesIn(cells().begin(), cells().end()),
                         name_of);

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
