#include "exchange/good_rows.h"
#include "exchange/taken_table.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace keenfall::exchange {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

std::string wide(const std::string& unit_row, const std::string& body) {
  return "blade;A;;B;\nmedium;rope;;;\nrun;1;2;1;2\n" + unit_row + "cuts;;;;\n" + body;
}

std::vector<std::string> sentences(const std::string& text) {
  std::vector<std::string> all;
  for (const base::Problem& problem : problems_in(text)) all.push_back(base::in_words(problem));
  return all;
}

trials::Trial trial_of(const std::string& text) {
  return take_table_text(text, "t.csv", {}).value();
}

// Without the odd cell all is in gf.
void expect_only_one_left_out(const std::string& text, TablePart part) {
  const auto rows = take_good_rows_of_text(text, "t.csv", {});
  ASSERT_TRUE(rows.has_value()) << base::in_words(rows.error().front());
  EXPECT_THAT(rows->left_out.parts, ElementsAre(part));
  ASSERT_THAT(rows->trial.series, SizeIs(1));
  EXPECT_EQ(rows->trial.series[0].unit, "gf");
  EXPECT_EQ(rows->trial.runs.at(0).readings.at(0).reading, 104);
}

TEST(OddUnits, OfACellAmongOthersThatNameNoneAreBlamedOnThatCell) {
  const std::string text =
      wide("", "0;104;101;99;100\n15;131;128;120;124\n31;150 N;150;140;144\n63;170;172;160;161\n");

  EXPECT_THAT(sentences(text),
              ElementsAre("t.csv, line 7, column B: This reading says N, and the others of run 1 "
                          "name no unit and are taken as gf. Accepted: what was read in gf; or N "
                          "for all of them, if that is what they were read in."));
  expect_only_one_left_out(text, {0, 7, 2});
}

TEST(OddUnits, OfACellBelowOneThatNamesTheUnitAreBlamedOnThatCell) {
  const std::string text =
      wide("", "0;104 gf;101;99;100\n15;131;128;120;124\n31;150 N;150;140;144\n");

  EXPECT_THAT(sentences(text),
              ElementsAre(HasSubstr("line 7, column B: This reading says N, and the others of run "
                                    "1 are in gf.")));
  expect_only_one_left_out(text, {0, 7, 2});
}

TEST(OddUnits, InTheFirstCellAreBlamedWhereTheOthersNameTheirs) {
  EXPECT_THAT(sentences(wide("", "0;1.5 N;101;99;100\n15;131 gf;128;120;124\n31;150 gf;;;\n")),
              ElementsAre(HasSubstr("line 5, column B: This reading says N")));
}

TEST(OddUnits, BesideARowOfUnitsAreBlamedOnTheCell) {
  const std::string text =
      wide("unit;gf;;;\n", "0;104;101;99;100\n15;131;128;120;124\n31;150 N;150;140;144\n");

  EXPECT_THAT(sentences(text), ElementsAre(HasSubstr("line 8, column B: The reading is in “N”")));
  expect_only_one_left_out(text, {0, 8, 2});
}

TEST(OddUnits, UnderAHeaderThatNamesTheUnitAreBlamedOnTheRow) {
  const std::string text =
      "blade,medium,run,cuts,reading [gf]\nA,rope,1,0,104\nA,rope,1,15,131\nA,rope,1,31,150 N\n"
      "B,rope,1,0,101\n";

  EXPECT_THAT(sentences(text),
              ElementsAre(HasSubstr("line 4, column reading [gf]: This reading says N")));
  expect_only_one_left_out(text, {0, 4, 0});
}

TEST(OddUnits, OfALongTableWithoutUnitsAreBlamedOnTheRow) {
  const std::string text =
      "blade,medium,run,cuts,reading\nA,rope,1,0,104\nA,rope,1,15,131\nA,rope,1,31,150 N\n";

  EXPECT_THAT(sentences(text), ElementsAre(HasSubstr("line 4, column reading: This reading")));
  expect_only_one_left_out(text, {0, 4, 0});
}

TEST(OddUnits, OfTwoCellsInDifferentRunsAreBothBlamed) {
  EXPECT_THAT(sentences(wide("", "0;104;101;99;100\n15;131;128;120 N;124\n31;150 N;150;140;144\n")),
              ElementsAre(HasSubstr("line 6, column D"), HasSubstr("line 7, column B")));
}

TEST(OddUnits, AreNoneWhereTheUnitIsThatOfTheOthers) {
  EXPECT_EQ(trial_of(wide("", "0;104;101;99;100\n15;131 gf;128;120;124\n")).series.at(0).unit,
            "gf");
  EXPECT_EQ(trial_of(wide("", "0;1.1 N;1.2;1.1;1.2\n15;1.3;1.4;1.5;1.6\n")).series.at(0).unit, "N");
  EXPECT_EQ(trial_of(wide("", "0;1.1;1.2 N;1.1;1.2\n15;1.3 N;1.4 N;1.5;1.6\n")).series.at(0).unit,
            "N");
}

TEST(OddUnits, AreNoneWhereAColumnOfUnitsSaysThem) {
  EXPECT_EQ(trial_of(with_columns("unit", "A,s,1,0,104,gf\nA,s,1,1,131,gf\nA,s,1,3,1.5,N\n"))
                .runs.at(0)
                .readings.size(),
            3U);
}

}  // namespace
}  // namespace keenfall::exchange
