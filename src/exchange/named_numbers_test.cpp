#include "exchange/named_numbers.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace keenfall::exchange {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

const std::vector<NumberColumn> kColumns = {
    {.name = "land_width_um", .highest = 100, .is_lowest_accepted = false},
    {.name = "tooth_depth_um", .otherwise = 0.0}};

std::vector<NamedNumbers> taken(const std::string& text) {
  return named_numbers(text, "finishes.csv", kColumns).value();
}

std::vector<std::string> refusals(const std::string& text) {
  std::vector<std::string> words;
  const auto read = named_numbers(text, "finishes.csv", kColumns);
  if (read) return {"not refused"};
  for (const base::Problem& problem : read.error()) words.push_back(in_words(problem));
  return words;
}

TEST(NamedNumbers, StandInTheOrderOfTheDefinitions) {
  const auto rows =
      taken("tooth_depth_um,name,land_width_um\n3,hone,0.4\n# a comment\n6,stone,.8\n");

  ASSERT_EQ(rows.size(), 2U);
  EXPECT_EQ(rows[0].name, "hone");
  EXPECT_THAT(rows[0].numbers, ElementsAre(0.4, 3));
  EXPECT_THAT(rows[1].numbers, ElementsAre(0.8, 6));
  EXPECT_EQ(rows[1].line, 4U);
}

TEST(NamedNumbers, TakeDecimalCommasWhereCellsAreParted) {
  EXPECT_THAT(taken("name;land_width_um\nhone;0,45\n")[0].numbers, ElementsAre(0.45, 0));
}

TEST(NamedNumbers, HaveTheUsualFigureWhereACellIsEmpty) {
  EXPECT_THAT(taken("name,land_width_um,tooth_depth_um\nhone,1,\n")[0].numbers, ElementsAre(1, 0));
}

TEST(NamedNumbers, NameEveryWrongCellAtOnce) {
  const auto words = refusals(
      "name,land_width_um,tooth_depth_um\n"
      "a,0,1\n"
      "b,wide,1\n"
      "c,,1\n"
      "a,1,1 um\n"
      ",1,-1\n");

  EXPECT_THAT(words,
              ElementsAre(HasSubstr("line 2, column land_width_um"),
                          HasSubstr("line 3, column land_width_um"),
                          HasSubstr("line 4, column land_width_um"),
                          HasSubstr("line 5, column name"),
                          HasSubstr("line 5, column tooth_depth_um"),
                          HasSubstr("line 6, column name"),
                          HasSubstr("line 6, column tooth_depth_um")));
  EXPECT_THAT(words[0], HasSubstr("a number above 0 to 100"));
  EXPECT_THAT(words[0], HasSubstr("“0” is out of the range of land_width_um"));
  EXPECT_THAT(words[1], HasSubstr("“wide”"));
  EXPECT_THAT(words[4], HasSubstr("the unit stands in the column's name"));
}

// “16,28” meant as one number is two cells where commas part them.
TEST(NamedNumbers, AreRefusedWhereACellStandsPastTheHeader) {
  const auto words = refusals("name,land_width_um,tooth_depth_um\nx,1,16,28,,\ny,1,2,,\n");

  ASSERT_THAT(words, ElementsAre(HasSubstr("line 2")));
  EXPECT_THAT(words[0], HasSubstr("Cell 4, “28”, stands under no column's name"));
  EXPECT_THAT(words[0], HasSubstr("“1,5” is two cells"));
}

TEST(NamedNumbers, AreRefusedWhereACellStandsUnderAHeaderWithoutName) {
  const auto words = refusals("name;;land_width_um\nx;7;1,5\ny;;2,5\n");

  ASSERT_THAT(words, ElementsAre(HasSubstr("line 2")));
  EXPECT_THAT(words[0], HasSubstr("Cell 2, “7”, stands under no column's name"));
}

TEST(NamedNumbers, NameColumnsThatAreMissingUnknownOrTwiceThere) {
  EXPECT_THAT(refusals("name,land\nhone,1\n"),
              ElementsAre(HasSubstr("No constant is called “land”"),
                          HasSubstr("The column land_width_um is not there")));
  EXPECT_THAT(refusals("land_width_um,land_width_um\n1,2\n"),
              ElementsAre(HasSubstr("twice"), HasSubstr("The column name is not there")));
}

TEST(NamedNumbers, AreRefusedWhereThereAreNone) {
  EXPECT_THAT(refusals(""), ElementsAre(HasSubstr("empty")));
  EXPECT_THAT(refusals("name,land_width_um\n"), ElementsAre(HasSubstr("no row")));
}

TEST(NamedNumbers, OfAFileThatIsNotThereAreRefusedByItsName) {
  const auto read = named_numbers_in_file("/nowhere/finishes.csv", kColumns);

  ASSERT_FALSE(read);
  EXPECT_EQ(read.error().at(0).kind, base::ProblemKind::unreadable);
  EXPECT_THAT(in_words(read.error().at(0)), HasSubstr("finishes.csv"));
}

}  // namespace
}  // namespace keenfall::exchange
