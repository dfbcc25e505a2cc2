#include "exchange/good_rows.h"

#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::exchange {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

GoodRows good_rows_in(const std::string& text) {
  const auto rows = take_good_rows_of_text(text, "folder/t.csv", {});
  if (!rows) throw std::runtime_error("refused: " + base::in_words(rows.error().front()));
  return *rows;
}

std::vector<std::string> sentences(const std::vector<base::Problem>& problems) {
  std::vector<std::string> all;
  for (const base::Problem& problem : problems) all.push_back(base::in_words(problem));
  return all;
}

std::string without_problems(const std::string& text) {
  return in_words(good_rows_in(text).left_out);
}

// Refused as without the option, in the same words.
void expect_refused_alike(const std::string& text) {
  const auto whole = take_table_text(text, "t.csv", {});
  const auto rows = take_good_rows_of_text(text, "t.csv", {});
  ASSERT_FALSE(whole.has_value()) << text;
  ASSERT_FALSE(rows.has_value()) << text;
  EXPECT_EQ(sentences(rows.error()), sentences(whole.error()));
}

TEST(GoodRowsOfALongTable, AreTakenAndTheBadOnesNamed) {
  const GoodRows rows = good_rows_in(with_rows("A,s,1,0,104\nA,s,1,9,-4\nA,s,1,20,120\n"));

  ASSERT_THAT(rows.trial.runs, SizeIs(1));
  ASSERT_THAT(rows.trial.runs[0].readings, SizeIs(2));
  EXPECT_EQ(rows.trial.runs[0].readings[1].line, 4U);
  EXPECT_EQ(in_words(rows.left_out), "1 row");
  EXPECT_THAT(rows.left_out.parts, ElementsAre(TablePart{0, 3, 0}));
  EXPECT_THAT(sentences(rows.left_out.problems),
              ElementsAre("folder/t.csv, line 3, column reading: A reading cannot be negative, as "
                          "“-4” is. Accepted: a number above zero, such as 104."));
  EXPECT_THAT(
      rows.left_out.remarks,
      ElementsAre(
          "Left out when t.csv was taken: line 3: A reading cannot be negative, as “-4” is."));
}

TEST(GoodRowsOfALongTable, AreAllOfAGoodOne) {
  const GoodRows rows = good_rows_in(with_rows("A,s,1,0,104\nA,s,1,9,120\n"));

  EXPECT_TRUE(rows.left_out.empty());
  EXPECT_THAT(rows.left_out.problems, IsEmpty());
  EXPECT_THAT(rows.left_out.remarks, IsEmpty());
  EXPECT_EQ(rows.trial.runs, taken(with_rows("A,s,1,0,104\nA,s,1,9,120\n")).runs);
}

TEST(GoodRowsOfALongTable, AreNamedTogetherWhereTheyShareAReason) {
  std::string text = "blade,medium,run,cuts,reading,kind\n";
  for (int run = 1; run <= 8; ++run) {
    const bool is_bad = run == 2 || (run > 3 && run < 8);
    text += "A,s," + std::to_string(run) + ",0,104," + (is_bad ? "foo\n" : "thread_push\n");
  }

  const GoodRows rows = good_rows_in(text);

  EXPECT_THAT(
      rows.left_out.remarks,
      ElementsAre("Left out when t.csv was taken: lines 3 and 5 to 8: “foo” is no kind of reading "
                  "known here."));
  EXPECT_THAT(rows.left_out.problems, SizeIs(1));
  EXPECT_EQ(in_words(rows.left_out), "5 rows");
}

TEST(GoodRows, AreRefusedWhereNothingGoodIsLeft) {
  expect_refused_alike(with_rows("A,s,1,0,x\nA,s,1,9,-4\n"));
}

TEST(GoodRows, AreThoseThatAreChosen) {
  const std::string text =
      "blade,medium,run,cuts,reading,day\nA,s,1,0,104,1\nA,s,1,9,-4,1\nA,s,2,0,-9,2\n";

  const auto first = take_good_rows_of_text(text, "t.csv", {.where = {{"day", "1"}}});
  const auto second = take_good_rows_of_text(text, "t.csv", {.where = {{"day", "2"}}});

  ASSERT_TRUE(first.has_value());
  EXPECT_THAT(first->left_out.parts, ElementsAre(TablePart{0, 3, 0}));
  ASSERT_FALSE(second.has_value());
  EXPECT_THAT(sentences(second.error()),
              ElementsAre(HasSubstr("A reading cannot be negative, as “-9” is.")));
}

TEST(GoodRows, AreRefusedWithTheTableWhereItIsBadAsAWhole) {
  expect_refused_alike(with_rows("A,s,1,0,104\nA,s,1,9,\xFF\nA,s,1,20,x\n"));  // not UTF-8
  expect_refused_alike("");
  expect_refused_alike("blade,medium,run,cuts\nA,s,1,0\nA,s,1,x\n");  // no column reading
  expect_refused_alike("blade;medium;run;cuts;reading\nA;s;1;0;1,234\nA;s;1;x;\n");
  expect_refused_alike(with_rows("A,s,1,0,104\nA,s,1,x,4\nA,s,\"1,20,120\nA,s,1,30,150\n"));
  expect_refused_alike(with_rows(""));
  expect_refused_alike(
      "blade,medium,run,cuts,reading,lasted\nA,s,1,0,104,40+ strokes\nA,s,2,0,104,40+ sheets\n");
}

TEST(ABladeWithTwoSteels, LosesTheRowsThatSayOtherwiseThanMost) {
  const GoodRows rows = good_rows_in(
      "blade,medium,run,cuts,reading,steel\n"
      "A,s,1,0,104,C57\nA,s,1,9,120,C75\nA,s,1,20,130,C75\n");

  EXPECT_EQ(rows.trial.blades.at(0).steel, "C75");
  EXPECT_THAT(rows.left_out.parts, ElementsAre(TablePart{0, 2, 0}));
  EXPECT_THAT(
      rows.left_out.remarks,
      ElementsAre("Left out when t.csv was taken: line 2: Blade “A” has the steel “C57” here, and "
                  "“C75” in line 3, as most rows say."));
}

TEST(ABladeWithTwoSteels, LosesARunThatNowhereSaysTheOneThatStands) {
  const GoodRows rows = good_rows_in(
      "blade,medium,run,cuts,reading,steel\n"
      "A,s,1,0,104,C75\nA,s,1,9,120,C75\nA,s,2,0,104,C57\nA,s,2,9,130,\n");

  EXPECT_THAT(rows.trial.runs, SizeIs(1));
  EXPECT_THAT(rows.left_out.parts, ElementsAre(TablePart{0, 4, 0}, TablePart{0, 5, 0}));
}

TEST(ABladeWithTwoSteels, KeepsTheFirstWhereBothAreSaidAsOften) {
  const GoodRows rows =
      good_rows_in("blade,medium,run,cuts,reading,steel\nA,s,1,0,104,C75\nA,s,2,0,104,C57\n");

  EXPECT_EQ(rows.trial.blades.at(0).steel, "C75");
  EXPECT_THAT(rows.left_out.remarks, ElementsAre(HasSubstr("where it is said first.")));
}

TEST(ARunThatContradictsItself, IsLeftOutWhole) {
  EXPECT_EQ(without_problems("blade,medium,run,cuts,reading,date\n"
                             "A,s,1,0,104,may 1\nA,s,1,9,120,may 2\nA,s,1,20,130,\n"
                             "A,s,2,0,104,may 3\n"),
            "3 rows");
  EXPECT_EQ(without_problems(with_rows("A,s,1,0,104\nA,s,1,20,120\nA,s,1,9,130\nA,s,2,0,9\n")),
            "3 rows");
  EXPECT_EQ(without_problems("blade,medium,run,cuts,reading,repeat\n"
                             "A,s,1,0,104,1\nA,s,1,0,105,1\nA,s,2,0,104,1\n"),
            "2 rows");
  EXPECT_EQ(without_problems("blade,medium,run,cuts,reading,thread\n"
                             "A,s,1,0,104,x\nA,s,1,9,105,y\nA,s,1,20,107,\nA,s,2,0,104,x\n"),
            "3 rows");
}

TEST(RowsThatFitTwoRuns, AreLeftOutAndBothRunsTaken) {
  const GoodRows rows = good_rows_in(
      "blade,medium,run,cuts,reading,finish\n"
      "A,s,1,0,104,coarse\nA,s,1,0,99,fine\nA,s,1,9,120,\n");

  EXPECT_THAT(rows.trial.runs, SizeIs(2));
  EXPECT_THAT(rows.left_out.parts, ElementsAre(TablePart{0, 4, 0}));
}

TEST(ARowThatIsLeftOut, TakesItsRunAlongWhereItAloneSaysThatItIsVoid) {
  const GoodRows rows = good_rows_in(
      "blade,medium,run,cuts,reading,voided\n"
      "A,s,1,0,104,\nA,s,1,9,x,edge chipped\nA,s,1,20,120,\nA,s,2,0,99,\n");

  ASSERT_THAT(rows.trial.runs, SizeIs(1));
  EXPECT_EQ(rows.trial.runs[0].name, "2");
  EXPECT_THAT(
      rows.left_out.remarks,
      ElementsAre("Left out when t.csv was taken: lines 2 and 4: Run “1” of blade “A” in “s” would "
                  "miss its voided: only line 3 says it, which is left out.",
                  HasSubstr("Left out when t.csv was taken: line 3: ")));
}

TEST(ARowThatIsLeftOut, TakesItsRunAlongWhereItAloneSaysTheEdgeOrTheUnit) {
  EXPECT_EQ(without_problems("blade,medium,run,cuts,reading,finish\n"
                             "A,s,1,0,x,coarse\nA,s,1,9,120,\nA,s,2,0,99,coarse\n"),
            "2 rows");
  EXPECT_EQ(without_problems("blade,medium,run,cuts,reading,bevel_angle_per_side_deg\n"
                             "A,s,1,0,104,1x\nA,s,1,9,120,\nA,s,2,0,99,15\n"),
            "2 rows");
  EXPECT_EQ(without_problems("blade,medium,run,cuts,reading,unit\n"
                             "A,s,1,0,x,N\nA,s,1,9,1.2,\nA,s,2,0,1.1,N\n"),
            "2 rows");
  // Which run it speaks of is not said.
  EXPECT_EQ(without_problems("blade,medium,run,cuts,reading,finish\n"
                             "A,s,,0,104,coarse\nA,s,1,9,120,\nA,s,2,0,99,coarse\n"),
            "2 rows");
}

TEST(ARowThatIsLeftOut, LeavesItsRunWhereAnotherRowSaysTheSame) {
  EXPECT_EQ(without_problems("blade,medium,run,cuts,reading,finish,unit,voided\n"
                             "A,s,1,0,x,coarse,N,lost\nA,s,1,9,1.2,coarse,N,lost\n"),
            "1 row");
  EXPECT_EQ(without_problems(with_rows("A,s,1,0,104\nA,s,1,9,12O\nA,s,1,20,130\n")), "1 row");
}

TEST(ARowThatIsLeftOut, LeavesItsRunWhereItsReadingHasLettersForDigits) {
  for (const std::string reading : {"1O0", "2OO", "16O", "13o", "l80"}) {
    const GoodRows rows =
        good_rows_in(with_rows("A,s,1,0,104\nA,s,1,9," + reading + "\nA,s,1,20,130\n"));

    EXPECT_THAT(rows.left_out.remarks,
                ElementsAre("Left out when t.csv was taken: line 3: reading “" + reading +
                            "” has letters that look like digits; write digits only."));
    EXPECT_EQ(rows.trial.runs.at(0).readings.size(), 2U);
  }
}

TEST(ARowThatIsLeftOut, LeavesItsRunWhereItsUnitIsOfAnotherKind) {
  EXPECT_EQ(without_problems("blade,medium,run,cuts,reading,kind\n"
                             "A,s,1,0,104,thread_push\nA,s,1,9,150 mm,thread_push\n"
                             "A,s,1,20,130,thread_push\n"),
            "1 row");
  EXPECT_EQ(without_problems(with_rows("A,s,1,0,104\nA,s,1,9,150 mm\nA,s,1,20,130\n")), "1 row");
}

TEST(RowsThatAreLeftOut, RefuseTheTableWhereTheyAloneNameTheUnit) {
  const auto rows = take_good_rows_of_text(
      "blade,medium,run,cuts,reading,unit\nA,s,1,0,x,N\nA,s,2,0,1.1,\n", "t.csv", {});

  ASSERT_FALSE(rows.has_value());
  EXPECT_THAT(base::in_words(rows.error().front()),
              HasSubstr("Only rows that are left out say the unit of the readings"));
}

TEST(GoodRowsOfAWideTable, LoseAReadingAColumnOrARow) {
  const std::string head = "blade;A;A;B\nmedium;s;s;s\nrun;1;2;1\nhardness_hrc;61;61;58\n";
  EXPECT_EQ(without_problems(head + "0;100;101;99\n10;110;-1;108\n20;;0;118\n"), "2 cells");
  EXPECT_EQ(without_problems(head + "0;100;101;99\n1O;110;111;108\n;112;113;109\n20;120;121;1\n"),
            "2 rows");
  EXPECT_EQ(without_problems("blade;A;A;B\nmedium;s;s;s\nrun;1;2;1\nhardness_hrc;61;6x;58\n"
                             "0;100;101;99\n10;110;-1;108\n"),
            "1 column");
}

TEST(GoodRowsOfAWideTable, NameCellsAndColumnsByTheirLetters) {
  const GoodRows rows = good_rows_in(
      "blade;A;A;B\nmedium;s;s;s\nrun;1;2;1\nhardness_hrc;61;61;5x\n"
      "0;100;101;99\n10;110;-1;108\n");

  EXPECT_THAT(rows.left_out.remarks,
              testing::UnorderedElementsAre(
                  HasSubstr("Left out when t.csv was taken: column D: hardness_hrc"),
                  "Left out when t.csv was taken: line 6, column C: A reading cannot be negative, "
                  "as “-1” is."));
}

TEST(GoodRowsOfAWideTable, LoseAllColumnsOfARunThatOneOfThemVoids) {
  EXPECT_EQ(without_problems("blade;A;A;B\nmedium;s;s;s\nrun;1;1;1\nstation;tip;heel;tip\n"
                             "hardness_hrc;6x;61;58\nvoided;lost;;\n0;100;101;99\n"),
            "2 columns");
}

TEST(GoodRowsOfALineARun, LoseAReadingOrTheRun) {
  const GoodRows rows = good_rows_in(
      "blade,medium,run,hardness_hrc,0,10,20\n"
      "A,s,1,61,100,110,-120\nA,s,2,6x,100,110,120\nA,s,3,61,100,110,120\n");

  EXPECT_EQ(in_words(rows.left_out), "1 row and 1 cell");
  ASSERT_THAT(rows.trial.runs, SizeIs(2));
  EXPECT_THAT(rows.trial.runs[0].readings, SizeIs(2));
  EXPECT_THAT(
      rows.left_out.remarks,
      ElementsAre(
          "Left out when t.csv was taken: line 2, column 20: A reading cannot be negative, as "
          "“-120” is.",
          HasSubstr("Left out when t.csv was taken: line 3: hardness_hrc")));
}

TEST(VeryManyBadRows, AreAllLeftOutAndCountedAndTheFirstListed) {
  constexpr int kBad = 1500;
  std::string text = with_rows("A,s,good,0,104\n");
  for (int i = 1; i <= kBad; ++i) text += "A,s,1,0,-" + std::to_string(i) + "\n";

  const GoodRows rows = good_rows_in(text);

  EXPECT_EQ(in_words(rows.left_out), "1500 rows");
  ASSERT_THAT(rows.left_out.problems, SizeIs(201));
  EXPECT_EQ(rows.left_out.problems.back().sentence,
            "And 1300 more problems like these, not listed.");
  ASSERT_THAT(rows.left_out.remarks, SizeIs(201));
  EXPECT_EQ(rows.left_out.remarks.back(),
            "Left out besides, and not named here: 1300 more places.");
}

}  // namespace
}  // namespace keenfall::exchange
