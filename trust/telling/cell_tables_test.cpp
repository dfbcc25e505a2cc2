#include "trust/telling/cell_tables.h"

#include "trust/measuring/cell_sums.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::trust {
namespace {

using testing::HasSubstr;
using testing::Not;

// 4,000 trials, of which so many intervals of each method hold the truth.
CellResult a_result(double covered, double by_one_shape = 3800) {
  return {.cell = &cells()[1],
          .sums = {{"trials", 4000},
                   {"covers half", covered},
                   {"covers level", 3800},
                   {"covers level of A", 3800},
                   {"covers deciding", covered},
                   {"longer or shorter", 4000 - covered},
                   {"log width", 4000},
                   {"curves of runs, Welch covers", 3800},
                   {"curves of runs, Welch both", 4000},
                   {"curves of runs, Welch wider", 40},
                   {"curves of runs, Welch wider squared", 40},
                   {"one shape, Welch covers", by_one_shape},
                   {"one shape, Welch both", 4000},
                   {"one shape, Welch wider", 800},
                   {"one shape, Welch wider squared", 200}}};
}

TEST(CellTables, SayWhereCoverageIsMissed) {
  EXPECT_THAT(coverage_table(std::vector{a_result(3800)}), Not(HasSubstr("missed")));
  EXPECT_THAT(coverage_table(std::vector{a_result(3600)}),
              HasSubstr("| runs-4 | 1 | 4000 | 90.0 ± 0.5 % **missed** | 95.0 ± 0.3 % |"));
}

TEST(CellTables, AskLessOfAMisspecifiedCell) {
  CellResult result = a_result(3680);  // 92 %
  EXPECT_FALSE(is_missed(share(3680, 4000), coverage_bar(*result.cell)) &&
               !is_missed(share(3680, 4000), {.side = Side::at_least, .limit = 0.93}));
  for (const Cell& cell : cells()) {
    EXPECT_DOUBLE_EQ(coverage_bar(cell).limit, cell.misspecified ? 0.91 : 0.93) << cell.name;
  }
}

TEST(CellTables, CountLongerOrShorterAsFalseWhereEdgesAreAlike) {
  CellResult result = a_result(3700);  // 7.5 % longer or shorter
  EXPECT_THAT(verdicts_table(std::vector{result}), HasSubstr("7.5 ± 0.4 % **missed**"));

  result.ratio = TrueRatio::margin;  // where it is no mistake
  EXPECT_THAT(verdicts_table(std::vector{result}),
              HasSubstr("| 7.5 ± 0.4 % | 0.0 ± 0.0 % | 0.0 ± 0.0 % |"));
}

TEST(CellTables, HoldTheWidthAgainstTheNarrowestThatCovers) {
  const NarrowestRival narrowest = narrowest_of(a_result(3800));

  EXPECT_EQ(narrowest.name, "one shape, Welch");
  EXPECT_NEAR(narrowest.wider.value, std::exp(0.2), 1e-9);
  EXPECT_THAT(widths_table(std::vector{a_result(3800)}),
              HasSubstr("one shape, Welch: 1.221 ± 0.002 **missed**"));
}

TEST(CellTables, DoNotCompareWithARivalThatDoesNotCover) {
  const NarrowestRival narrowest = narrowest_of(a_result(3800, 3500));

  EXPECT_EQ(narrowest.name, "curves of runs, Welch");
  EXPECT_NEAR(narrowest.wider.value, std::exp(0.01), 1e-9);
}

TEST(CellTables, SayWhereTheEnginesDiffer) {
  const CellResult result{.cell = cells().data(),
                          .sums = {{"trials", 400},
                                   {"unusable", 8},
                                   {"covers half", 384},
                                   {"agree", 350},
                                   {"covers by quick alone", 4},
                                   {"quick both", 392},
                                   {"quick wider", 0},
                                   {"quick wider squared", 1}}};

  const std::string table = engines_table(std::vector{result});

  EXPECT_THAT(table, HasSubstr("89.3 ± 1.6 % **missed**"));  // 350 of 392
  EXPECT_THAT(table, HasSubstr("1.0 ± 0.5 %"));              // quick covers four more of 392
  EXPECT_THAT(table, HasSubstr("2.0 ± 0.7 % |"));            // not usable, within the bar's error
}

}  // namespace
}  // namespace keenfall::trust
