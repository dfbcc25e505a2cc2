#include "exchange/table_survey.h"

#include "exchange/column_words.h"
#include "exchange/table_columns.h"
#include "exchange/text_file.h"
#include "exchange/watched_tables.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstddef>
#include <ctime>
#include <string>
#include <vector>

namespace keenfall::exchange {
namespace {

TableSurvey survey(const std::string& text, const TableOptions& options = {}) {
  const TableInHand table{.name = "t.csv", .bytes = text};
  return survey_tables({&table, 1}, options);
}

// The text of the cell a problem stands beside.
std::string cell_of(const TableSurvey& survey, const PlacedProblem& placed) {
  return survey.grids.at(placed.grid.value()).rows.at(placed.row.value()).at(placed.column.value());
}

std::string long_rows(std::size_t count) {
  std::string text = "blade,medium,run,cuts,reading\n";
  for (std::size_t i = 0; i < count; ++i) {
    text += "A,sisal," + std::to_string(i / 10) + "," + std::to_string(i % 10) + "," +
            std::to_string(100 + i % 10) + "\n";
  }
  return text;
}

const std::string kGood = "blade,medium,run,cuts,reading\nA,sisal,1,0,104\nA,sisal,1,15,131\n";

TEST(TableSurvey, AGoodTableIsShownAsItWouldBeTaken) {
  const TableSurvey seen = survey(kGood);

  ASSERT_EQ(seen.grids.size(), 1U);
  EXPECT_EQ(seen.grids[0].shape, TableShape::long_rows);
  EXPECT_EQ(seen.grids[0].header_row, 0U);
  EXPECT_EQ(seen.grids[0].row_count, 3U);
  EXPECT_THAT(seen.grids[0].row_numbers, testing::ElementsAre(1, 2, 3));
  EXPECT_THAT(seen.problems, testing::IsEmpty());
  ASSERT_TRUE(seen.good);
  EXPECT_EQ(seen.good->trial.runs.at(0).readings.size(), 2U);
}

TEST(TableSurvey, AMistypedNumberIsMarkedInExactlyItsCell) {
  const TableSurvey seen =
      survey("blade,medium,run,cuts,reading\nA,sisal,1,0,104\nA,sisal,1,15,1o7\n");

  ASSERT_EQ(seen.problems.size(), 1U);
  EXPECT_EQ(seen.problems[0].row, 2U);
  EXPECT_EQ(seen.problems[0].column, 4U);
  EXPECT_EQ(cell_of(seen, seen.problems[0]), "1o7");
  EXPECT_EQ(seen.problems[0].problem.sentence,
            "reading “1o7” has letters that look like digits; write digits only.");
}

TEST(TableSurvey, AMistypedNumberIsMarkedInAWideTableToo) {
  const TableSurvey seen = survey("blade;A;B\nmedium;sisal;sisal\nrun;1;1\n0;104;99\n15;131;1o7\n");

  ASSERT_EQ(seen.grids.at(0).shape, TableShape::wide);
  ASSERT_EQ(seen.problems.size(), 1U);
  EXPECT_EQ(cell_of(seen, seen.problems[0]), "1o7");
  EXPECT_EQ(seen.grids[0].header_row, std::nullopt);
}

TEST(TableSurvey, AMistypedNumberIsMarkedInALineARunToo) {
  const TableSurvey seen =
      survey("blade,medium,run,0,15 cuts\nA,sisal,1,104,131\nB,sisal,1,99,1o7\n");

  ASSERT_EQ(seen.grids.at(0).shape, TableShape::runs);
  ASSERT_EQ(seen.problems.size(), 1U);
  EXPECT_EQ(cell_of(seen, seen.problems[0]), "1o7");
  EXPECT_EQ(seen.grids[0].headers.at(4).words, "readings after 15 cuts");
}

TEST(TableSurvey, WhatIsSaidOfManyRowsIsMarkedInEach) {
  const TableSurvey seen =
      survey("blade,medium,run,cuts,reading,unit\nA,sisal,1,0,104,mm\nA,sisal,1,5,110,mm\n");

  ASSERT_EQ(seen.problems.size(), 2U);
  EXPECT_EQ(cell_of(seen, seen.problems[0]), "mm");
  EXPECT_EQ(cell_of(seen, seen.problems[1]), "mm");
  EXPECT_EQ(seen.problems[1].row, 2U);
}

TEST(TableSurvey, OnlyFiveHundredProblemsAreListedAndAllAreCounted) {
  std::string text = "blade,medium,run,cuts,reading\n";
  for (int i = 0; i < 700; ++i) text += "A,sisal,1," + std::to_string(i) + ",x1x\n";

  const TableSurvey seen = survey(text);

  EXPECT_EQ(seen.problems.size(), 500U);
  EXPECT_EQ(seen.problem_count, 700U);
}

TEST(TableSurvey, RowsWithProblemsAreShownBesideTheFirstTwoHundred) {
  std::string text = long_rows(1000);
  text += "A,sisal,ten,0,1o7\n";

  const TableSurvey seen = survey(text);

  EXPECT_EQ(seen.grids.at(0).rows.size(), 201U);
  EXPECT_EQ(seen.grids[0].row_count, 1002U);
  EXPECT_EQ(seen.grids[0].row_numbers.back(), 1002U);
  ASSERT_EQ(seen.problems.size(), 1U);
  EXPECT_EQ(seen.problems[0].row, 200U);
  EXPECT_EQ(cell_of(seen, seen.problems[0]), "1o7");
}

TEST(TableSurvey, WhatWouldComeInIsWhatIsGood) {
  const TableSurvey seen = survey("blade,medium,run,cuts,reading\nA,s,1,0,104\nA,s,1,15,1o7\n");

  ASSERT_TRUE(seen.good);
  EXPECT_EQ(seen.good->trial.runs.at(0).readings.size(), 1U);
  EXPECT_EQ(in_words(seen.good->left_out), "1 row");
}

TEST(TableSurvey, HeadersAreExactOrAnotherUsualName) {
  const TableSurvey seen =
      survey("Knife,medium,run,cuts,Reading (gf),heft\nA,sisal,1,0,104,x\nA,sisal,1,5,120,x\n");

  const auto& headers = seen.grids.at(0).headers;
  ASSERT_EQ(headers.size(), 6U);
  EXPECT_EQ(headers[0].ours, "blade");
  EXPECT_EQ(headers[0].words, "the name of the blade");
  EXPECT_FALSE(headers[0].is_own_name);
  EXPECT_FALSE(headers[0].is_proposed);
  EXPECT_TRUE(headers[1].is_own_name);
  EXPECT_EQ(headers[4].words, "the sharpness reading, in gf");
  EXPECT_EQ(headers[5].ours, "");
  EXPECT_EQ(headers[5].words, "");
}

TEST(TableSurvey, AGuessIsProposedAndShownAsWhatItWouldBring) {
  const std::string text = "Sample,medium,run,cuts,reading\nA,sisal,1,0,104\n";

  const TableSurvey seen = survey(text);

  EXPECT_THAT(seen.proposed, testing::ElementsAre(ColumnMapping{"blade", "Sample"}));
  EXPECT_TRUE(seen.grids.at(0).headers.at(0).is_proposed);
  EXPECT_FALSE(seen.grids[0].headers[0].is_own_name);
  EXPECT_TRUE(seen.good);
}

TEST(TableSurvey, AGuessIsNotTakenWhereNobodySaidIt) {
  const TableInHand table{.name = "t.csv",
                          .bytes = "Sample,medium,run,cuts,reading\nA,sisal,1,0,104\n"};

  EXPECT_FALSE(take_good_rows_in_hand({&table, 1}, {}));
  EXPECT_TRUE(take_good_rows_in_hand({&table, 1}, {.columns = {{"blade", "Sample"}}}));
}

TEST(TableSurvey, AnEmptyFileHasNoRowsAndAProblemOfTheWhole) {
  const TableSurvey seen = survey("");

  ASSERT_EQ(seen.problems.size(), 1U);
  EXPECT_EQ(seen.problems[0].problem.sentence, "The file is empty.");
  EXPECT_EQ(seen.problems[0].row, std::nullopt);
  EXPECT_EQ(seen.grids.at(0).row_count, 0U);
  EXPECT_FALSE(seen.good);
}

TEST(TableSurvey, AHeaderAloneIsShownWithWhatItLacks) {
  const TableSurvey seen = survey("blade,medium,run,cuts,reading\n");

  ASSERT_EQ(seen.problems.size(), 1U);
  EXPECT_EQ(seen.problems[0].problem.sentence, "The table has a header but no rows.");
  EXPECT_EQ(seen.grids.at(0).headers.size(), 5U);
}

TEST(TableSurvey, AMissingColumnStandsBesideTheHeader) {
  const TableSurvey seen = survey("blade,medium,run,reading\nA,sisal,1,104\n");

  ASSERT_EQ(seen.problems.size(), 1U);
  EXPECT_EQ(seen.problems[0].row, 0U);
  EXPECT_EQ(seen.problems[0].column, std::nullopt);
}

TEST(TableSurvey, BytesThatAreNoTextHaveAProblemAndNoRows) {
  for (const std::string& bytes :
       {std::string("blade,medium\nA,\xFF\xFE\n"), std::string("blade,medium\nA,\0\n", 16)}) {
    const TableSurvey seen = survey(bytes);

    ASSERT_EQ(seen.problems.size(), 1U);
    EXPECT_EQ(seen.problems[0].source, 0U);
    EXPECT_EQ(seen.problems[0].problem.place.line, 2U);
    EXPECT_THAT(seen.grids, testing::IsEmpty());
  }
}

TEST(TableSurvey, AByteOrderMarkIsNoPartOfTheFirstHeader) {
  EXPECT_EQ(survey("\xEF\xBB\xBF" + kGood).grids.at(0).headers.at(0).theirs, "blade");
}

TEST(TableSurvey, ScriptInHeadersAndCellsStaysTheTextItIs) {
  const TableSurvey seen = survey(
      "blade,medium,run,cuts,reading,<script>alert(1)</script>\n"
      "<img src=x onerror=alert(1)>,sisal,1,0,104,\"\"\"><svg/onload=alert(1)>\"\n");

  EXPECT_THAT(seen.problems, testing::IsEmpty());
  EXPECT_EQ(seen.grids.at(0).headers.at(5).theirs, "<script>alert(1)</script>");
  EXPECT_EQ(seen.grids[0].rows.at(1).at(0), "<img src=x onerror=alert(1)>");
  EXPECT_EQ(seen.good.value().trial.runs.at(0).arm.blade, "<img src=x onerror=alert(1)>");
}

TEST(TableSurvey, ATitleAboveTheHeaderIsARowLikeOthers) {
  const TableSurvey seen = survey("Bench in spring,,,,\n" + kGood);

  EXPECT_EQ(seen.grids.at(0).header_row, 1U);
  EXPECT_EQ(seen.grids[0].headers.at(4).ours, "reading");
}

TEST(TableSurvey, ALongCellAndAManyColumnedRowAreShownCut) {
  std::string header = "blade,medium,run,cuts,reading";
  std::string row = "A,sisal,1,0,104";
  for (int i = 0; i < 2000; ++i) {
    header += ",x" + std::to_string(i);
    row += i == 0 ? "," + std::string(5000, 'y') : ",";
  }

  const TableSurvey seen = survey(header + "\n" + row + "\n");

  EXPECT_EQ(seen.grids.at(0).rows.at(0).size(), 1000U);
  EXPECT_EQ(seen.grids[0].rows[1][5], std::string(1000, 'y') + "…");
}

TEST(TableSurvey, SeveralTablesAreOneTrialAndEachHasItsGrid) {
  const std::vector<TableInHand> tables = {
      {.name = "a.csv", .bytes = kGood},
      {.name = "b.csv", .bytes = "blade;medium;run;cuts;reading\nB;sisal;1;0;1o7\n"}};

  const TableSurvey seen = survey_tables(tables, {});

  ASSERT_EQ(seen.grids.size(), 2U);
  EXPECT_EQ(seen.grids[1].source, 1U);
  ASSERT_EQ(seen.problems.size(), 1U);
  EXPECT_EQ(seen.problems[0].source, 1U);
  EXPECT_EQ(seen.problems[0].grid, 1U);
  EXPECT_EQ(cell_of(seen, seen.problems[0]), "1o7");
}

TEST(TableSurvey, NoTableHasNothingToShow) {
  const TableSurvey seen = survey_tables({}, {});

  EXPECT_THAT(seen.grids, testing::IsEmpty());
}

TEST(TableSurvey, AWrongOptionIsAProblemOfNoTable) {
  const TableSurvey seen = survey(kGood, {.default_kind = "heft"});

  ASSERT_EQ(seen.problems.size(), 1U);
  EXPECT_EQ(seen.problems[0].source, std::nullopt);
}

TEST(TableSurvey, EveryColumnHasWordsAndTheFirstFiveAreRequired) {
  const auto columns = known_columns();

  ASSERT_EQ(columns.size(), kColumnCount);
  for (std::size_t i = 0; i < columns.size(); ++i) {
    EXPECT_FALSE(columns[i].words.empty());
    EXPECT_EQ(columns[i].is_required, i < 5);
  }
  EXPECT_EQ(column_in_words(Column::stop_cuts), "cuts made until the last reading");
}

// The bar, set beforehand: a table of 1,000 rows in well under 100 ms. Time of this process, which
// others' work does not lengthen; sanitizers do, and are allowed ten times as much.
TEST(TableSurvey, AThousandRowsTakeWellUnderATenthOfASecond) {
  const std::string text = long_rows(1000) + "A,sisal,ten,0,1o7\n";
#ifdef __SANITIZE_ADDRESS__
  constexpr double kBarMilliseconds = 1000;
#else
  constexpr double kBarMilliseconds = 100;
#endif
  const std::clock_t start = std::clock();

  const TableSurvey seen = survey(text);

  const double milliseconds = 1000.0 * double(std::clock() - start) / CLOCKS_PER_SEC;
  EXPECT_EQ(seen.problems.size(), 1U);
  RecordProperty("milliseconds", std::to_string(milliseconds));
  EXPECT_LT(milliseconds, kBarMilliseconds);
}

TEST(TableSurvey, SaysHowFarItIsAndStopsWhereItIsAskedTo) {
  std::string of_another_blade = long_rows(5000);
  std::ranges::replace(of_another_blade, 'A', 'B');
  const std::vector<TableInHand> tables = {{.name = "a.csv", .bytes = long_rows(5000)},
                                           {.name = "b.csv", .bytes = of_another_blade}};
  std::vector<double> told;
  const auto whole = survey_tables(tables, {}, [&](const base::Progress& progress) {
    told.push_back(progress.fraction_done);
    return true;
  });
  std::size_t asked = 0;
  const auto stopped =
      survey_tables(tables, {}, [&](const base::Progress&) { return ++asked < 3; });

  EXPECT_TRUE(std::ranges::is_sorted(told));
  EXPECT_GE(told.size(), 10U);
  EXPECT_LT(told.front(), 0.2);
  EXPECT_GT(told[9], 0.8);
  EXPECT_LE(told.back(), 1);
  EXPECT_TRUE(whole.good);
  EXPECT_EQ(asked, 3U);
  EXPECT_FALSE(stopped.good);
  ASSERT_FALSE(stopped.problems.empty());
  EXPECT_EQ(stopped.problems.front().problem.kind, base::ProblemKind::interrupted);
}

}  // namespace
}  // namespace keenfall::exchange
